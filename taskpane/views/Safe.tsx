import { Component, type ReactNode } from "react";
import { Button } from "../components/Button";
import { Message } from "../components/Message";

/** Keeps the rest of the pane standing where a section fails: a part that cannot be loaded, or a fault of ours. */
export class Safe extends Component<{ readonly children: ReactNode }, { readonly failed: boolean }> {
  override readonly state = { failed: false };

  static getDerivedStateFromError(): { readonly failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children;
    return (
      <div role="alert">
        <Message intent="error">
          This part of the pane could not be shown. Nothing in the workbook was changed. Try again, choose another
          section, or close the pane and open it again.{" "}
          <Button onClick={() => this.setState({ failed: false })}>Try again</Button>
        </Message>
      </div>
    );
  }
}
