import type { ReactNode } from "react";
import { Mark } from "./Field";

const marks = { info: "i", success: "✓", warning: "!", error: "×" } as const;

interface MessageProps {
  readonly intent: keyof typeof marks;
  readonly children: ReactNode;
}

/** Words in a frame. It is announced by what stands around it: `role="status"`, or `role="alert"` for a fault. */
export const Message = ({ intent, children }: MessageProps) => (
  <div className={`message ${intent}`}>
    <Mark>{marks[intent]}</Mark>
    <div className="words">{children}</div>
  </div>
);
