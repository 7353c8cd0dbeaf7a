import { VERSION } from "../../functions/release";
import { probe } from "../actions/probe";
import { cautionsByTopic, notThis, practice } from "../care";
import { Act } from "./Act";
import { HandbookLink } from "./HandbookLink";
import { Cautions, Points, SmallTitle, Title, Words } from "./Parts";

export default function Care() {
  return (
    <>
      <Title>What this tool is not</Title>
      <Points>
        {notThis.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </Points>
      <Words quiet>This add-in sends nothing anywhere.</Words>

      {practice.map(({ title, points }) => (
        <section key={title} className="part">
          <Title>{title}</Title>
          <Words quiet>Common practice, no source.</Words>
          <Points>
            {points.map((point) => (
              <li key={point}>{point}</li>
            ))}
          </Points>
        </section>
      ))}

      <section className="part">
        <Title>Cautions by topic</Title>
        {cautionsByTopic().map(({ title, keys }) => (
          <section key={title}>
            <SmallTitle>{title}</SmallTitle>
            <Cautions of={keys} />
          </section>
        ))}
      </section>

      <section className="part">
        <Title>Blank cells in this spreadsheet</Title>
        <Words>{probe.about}</Words>
        <Act action={probe} choice={undefined} />
      </section>
      <HandbookLink path="winter-trouble">When something goes wrong in winter</HandbookLink>
      <HandbookLink path="index">The handbook</HandbookLink>
      <Words quiet>Vivarium Almanac {VERSION}</Words>
    </>
  );
}
