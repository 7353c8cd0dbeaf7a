import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { cautions, type CautionKey } from "../../functions/cautions";

const useStyles = makeStyles({
  title: { fontSize: "1rem", lineHeight: 1.4, fontWeight: 600, margin: "0 0 4px" },
  small: { fontSize: "0.875rem", lineHeight: 1.4, fontWeight: 600, margin: "12px 0 4px" },
  words: { margin: "0 0 8px" },
  quiet: { margin: "0 0 8px", color: tokens.colorNeutralForeground2 },
  list: { margin: "0 0 8px", paddingInlineStart: "18px", "& li": { marginBottom: "4px" } },
  caution: {
    margin: "0 0 4px",
    paddingInlineStart: "8px",
    borderInlineStartWidth: "3px",
    borderInlineStartStyle: "solid",
    borderInlineStartColor: tokens.colorPaletteMarigoldBorderActive,
    fontSize: "0.8125rem",
    lineHeight: 1.4,
  },
});

/** Lets a field be as narrow as the pane: the library lets it grow as wide as its content. */
export const useNarrow = makeStyles({
  field: { minWidth: 0, gridTemplateColumns: "minmax(0, 1fr)" },
  within: { minWidth: 0, width: "100%" },
});

export const Title = ({ children, id }: { readonly children: ReactNode; readonly id?: string }) => (
  <h2 id={id} className={useStyles().title}>
    {children}
  </h2>
);

export const SmallTitle = ({ children, id }: { readonly children: ReactNode; readonly id?: string }) => (
  <h3 id={id} className={useStyles().small}>
    {children}
  </h3>
);

export const Words = ({ children, quiet }: { readonly children: ReactNode; readonly quiet?: boolean }) => {
  const styles = useStyles();
  return <p className={quiet ? styles.quiet : styles.words}>{children}</p>;
};

export const Points = ({ children }: { readonly children: ReactNode }) => (
  <ul className={useStyles().list}>{children}</ul>
);

/** Cautions, each with the word: a colour alone says nothing. */
export const Cautions = ({ of }: { readonly of: readonly CautionKey[] }) => {
  const styles = useStyles();
  return (
    <>
      {of.map((key) => (
        <p key={key} className={styles.caution}>
          <strong>Caution. </strong>
          {cautions[key]}
        </p>
      ))}
    </>
  );
};
