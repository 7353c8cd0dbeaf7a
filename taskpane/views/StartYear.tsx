import { useEffect, useState } from "react";
import { symbol, toMetric, type Unit } from "../../functions/units";
import { blankYear, startYear, usualSheets, yearSheets, type YearForm } from "../actions/startYear";
import { Checkbox } from "../components/Checkbox";
import { Input } from "../components/Input";
import { Select } from "../components/Select";
import { exampleIn } from "../sheets/shared/quantities";
import { Act } from "./Act";
import { Cautions, Title, Words } from "./Parts";
import { useUnits } from "./useUnits";

/** What was typed stays while the pane is open. */
let kept = blankYear;

/** One short form, and the sheets of a year that follow from it. */
export const StartYear = () => {
  const [form, setForm] = useState(kept);
  const units = useUnits();
  const { units: typedIn = "metric" } = form;
  const say = (change: Partial<YearForm>): void => {
    kept = { ...form, ...change };
    setForm(kept);
  };
  // What was typed is the same animal's in the other units.
  useEffect(() => {
    if (typedIn === units) return;
    const turned = (typed: string, unit: Unit): string =>
      Number.isFinite(Number(typed)) && typed.trim() !== ""
        ? String(exampleIn(toMetric(Number(typed), unit, typedIn), unit, units))
        : typed;
    say({ units, mass: turned(form.mass, "gram"), elevation: turned(form.elevation, "metre") });
  });
  return (
    <section className="item">
      <Title>{startYear.label}</Title>
      <Words>{startYear.about}</Words>
      <div className="fields">
        <Input label="Animal" value={form.label} onChange={(label) => say({ label })} />
        <Select
          label="Sex"
          value={form.sex === "" ? undefined : form.sex}
          options={[
            ["female", "female"],
            ["male", "male"],
            ["unknown", "unknown"],
          ]}
          first="not said"
          onChoose={(sex) => say({ sex: sex ?? "" })}
        />
        <Input label="Born" type="date" value={form.born} onChange={(born) => say({ born })} />
        <Input
          label={`Mass, ${symbol("gram", units)}`}
          inputMode="decimal"
          value={form.mass}
          onChange={(mass) => say({ mass })}
        />
        <Select
          label="Adult or young"
          value={form.age}
          options={[
            ["adult", "adult, winters"],
            ["young", "young, does not winter"],
          ]}
          onChoose={(age = "adult") => say({ age, sheets: usualSheets(age) })}
        />
        <Input
          label="Latitude of its home, ° (south −)"
          inputMode="decimal"
          value={form.latitude}
          onChange={(latitude) => say({ latitude })}
        />
        <Input
          label="Longitude, ° (west −)"
          inputMode="decimal"
          value={form.longitude}
          onChange={(longitude) => say({ longitude })}
        />
        <Input
          label={`Elevation there, ${symbol("metre", units)}`}
          inputMode="decimal"
          value={form.elevation}
          onChange={(elevation) => say({ elevation })}
        />
        <Select
          label="Planned"
          value={form.way}
          options={[
            ["forwards", "from the last meal"],
            ["backwards", "back from the first"],
          ]}
          onChoose={(way = "forwards") => say({ way })}
        />
        <Input
          label={form.way === "forwards" ? "Day of the last meal" : "Day of the first meal"}
          type="date"
          value={form.when}
          onChange={(when) => say({ when })}
        />
      </div>
      <fieldset className="choices">
        <legend>Which sheets</legend>
        {yearSheets.map(({ key, name }) => (
          <Checkbox
            key={key}
            label={name}
            checked={form.sheets.includes(key)}
            onChange={(on) => say({ sheets: on ? [...form.sheets, key] : form.sheets.filter((one) => one !== key) })}
          />
        ))}
      </fieldset>
      <Cautions of={["coldKills", "noVet"]} />
      <Act action={startYear} choice={form} primary />
    </section>
  );
};
