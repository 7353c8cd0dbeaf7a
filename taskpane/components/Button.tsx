import { forwardRef, type ComponentPropsWithoutRef } from "react";

interface ButtonProps extends Omit<ComponentPropsWithoutRef<"button">, "type" | "className" | "disabled"> {
  /** The one button of its place that is meant first. */
  readonly primary?: boolean;
  /** Does nothing now, but keeps its place in the order of the Tab key, so that the focus is not lost. */
  readonly unavailable?: boolean;
}

export const Button = forwardRef<HTMLButtonElement, ButtonProps>(function Button(
  { primary = false, unavailable = false, onClick, ...rest },
  ref,
) {
  return (
    <button
      {...rest}
      ref={ref}
      type="button"
      className={primary ? "button primary" : "button"}
      aria-disabled={unavailable || undefined}
      onClick={unavailable ? undefined : onClick}
    />
  );
});
