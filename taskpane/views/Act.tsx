import { useEffect, useId, useRef, useState, type ReactNode } from "react";
import { Button } from "../components/Button";
import { Message } from "../components/Message";
import { Progress } from "../components/Progress";
import { Textarea } from "../components/Textarea";
import { failureInWords, perform, type Action, type Outcome, type Words } from "../actions/action";
import { usePane } from "./context";

type State =
  | { readonly kind: "rest" }
  | { readonly kind: "running" }
  | Outcome
  | { readonly kind: "failed"; readonly text: string };

/** What is shown of longer lists; the rest is counted. */
const SHOWN = 200;
const PROGRESS_AFTER = 1000; // ms: what is quicker needs no progress

/** A list that scrolls can be reached and scrolled by keyboard. */
const List = ({ items, label }: { readonly items: readonly string[]; readonly label: string }) => (
  <ul className="details" tabIndex={0} aria-label={label}>
    {items.slice(0, SHOWN).map((item, i) => (
      <li key={i}>{item}</li>
    ))}
    {items.length > SHOWN && <li>and {items.length - SHOWN} more</li>}
  </ul>
);

interface ActProps<Choice> {
  readonly action: Action<Choice>;
  readonly choice: Choice;
  /** The name of the button for a screen reader, where the label alone would not tell which. */
  readonly name?: string;
  readonly primary?: boolean;
  readonly unavailable?: boolean;
  readonly onDone?: () => void;
  /** Shown in the row, after the button. */
  readonly children?: ReactNode;
}

/** A button for an action, and in place under it: the question, the progress with its cancel, and what came of it. */
export const Act = <Choice,>({ action, choice, name, primary, unavailable, onDone, children }: ActProps<Choice>) => {
  const { workbook, busy, setBusy } = usePane();
  const [state, setState] = useState<State>({ kind: "rest" });
  const [share, setShare] = useState<number | undefined>();
  const [slow, setSlow] = useState(false);
  const stopper = useRef<AbortController | undefined>(undefined);
  const button = useRef<HTMLButtonElement>(null);
  const agree = useRef<HTMLButtonElement>(null);
  const about = useId();

  // What is running ends with the page that would show it.
  useEffect(() => () => stopper.current?.abort(), []);
  useEffect(() => {
    if (state.kind === "ask") agree.current?.focus();
  }, [state]);

  const press = async (agreed?: Words) => {
    if (busy) return;
    const { signal } = (stopper.current = new AbortController());
    // The question goes away: the focus returns to where it came from.
    if (agreed) button.current?.focus();
    setState({ kind: "running" });
    setShare(undefined);
    setSlow(false);
    setBusy(true);
    const timer = setTimeout(() => setSlow(true), PROGRESS_AFTER);
    try {
      const outcome = await perform(action, workbook, choice, { signal, progress: setShare }, agreed);
      setState(outcome);
      if (outcome.kind === "done") onDone?.();
    } catch (failure) {
      setState({ kind: "failed", text: failureInWords(failure) });
    } finally {
      clearTimeout(timer);
      setSlow(false);
      setBusy(false);
    }
  };

  const leave = () => {
    setState({ kind: "rest" });
    button.current?.focus();
  };

  const running = state.kind === "running";
  return (
    <div className="act">
      <div className="row">
        <Button
          ref={button}
          primary={primary}
          aria-label={name}
          unavailable={busy || unavailable}
          onClick={() => void press()}
        >
          {action.label}
        </Button>
        {children}
        {running && slow && (
          <>
            <Progress share={share} label={`${action.label}: how far it is`} />
            <Button onClick={() => stopper.current?.abort()}>Cancel</Button>
          </>
        )}
      </div>
      {state.kind === "ask" && (
        <Message intent="info">
          <span id={about}>{state.words.text}</span>
          {state.words.list && <List items={state.words.list} label="In detail" />}
          <div className="row">
            <Button ref={agree} primary aria-describedby={about} onClick={() => void press(state.words)}>
              Go ahead
            </Button>
            <Button onClick={leave}>Leave it</Button>
          </div>
        </Message>
      )}
      <div role="status">
        {state.kind === "done" && (
          <Message intent={state.done.left?.length ? "warning" : "success"}>
            {state.done.text}
            {!!state.done.left?.length && <List items={state.done.left} label="Left as it was" />}
          </Message>
        )}
        {state.kind === "refused" && (
          <Message intent="warning">
            {state.words.text}
            {!!state.words.list?.length && <List items={state.words.list} label="In detail" />}
          </Message>
        )}
        {state.kind === "failed" && <Message intent="error">{state.text}</Message>}
      </div>
      {state.kind === "done" && state.done.copy && (
        // Apart from what is announced, which would be all of it.
        <Textarea
          label={state.done.copy.label}
          wide
          readOnly
          rows={5}
          value={state.done.copy.text}
          onChange={() => undefined}
          onFocus={({ currentTarget }) => currentTarget.select()}
        />
      )}
    </div>
  );
};
