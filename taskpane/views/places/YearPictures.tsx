import { useEffect, useState } from "react";
import type { Network } from "../../../functions/network/network";
import { captionOfYear, drawYear, saveYear, type PlaceYear, type YearPicture } from "../../actions/saveYear";
import { papers, pictureKinds } from "../pictureOptions";
import { yearWords } from "../../pictures/year/yearWords";
import type { Paper } from "../../pictures/save";
import type { PictureKind } from "../../actions/savePicture";
import { Button } from "../../components/Button";
import { Input } from "../../components/Input";
import { Select } from "../../components/Select";
import { Act } from "../Act";
import { usePane } from "../context";
import { Words } from "../Parts";
import { estimatedYear, stationYear } from "./placeYear";
import type { Spot } from "./readPlace";
import type { Speaking } from "./speaking";

const STRIP = "strip";
const RING = "ring";
const ASIDE = "aside";
const UNNAMED = "Where the animal lives";

/** A year that was put aside, to stand beside another; it stays while the pane is open. */
let putAside: PlaceYear | undefined;

/** °C: what Native climate counts by where nothing else is said. */
const COLD = "10";

/** The same object as long as it says the same. */
const useStable = <T,>(value: T): T => {
  const text = JSON.stringify(value);
  const [kept, setKept] = useState({ text, value });
  if (kept.text !== text) setKept({ text, value });
  return kept.text === text ? kept.value : value;
};

/** The picture as it will be saved, its caption left out: that is read in words beside it. */
const Shown = ({ picture, paper }: { readonly picture: YearPicture; readonly paper: Paper }) => {
  const [source, setSource] = useState<string | undefined>();
  useEffect(() => {
    let isWanted = true;
    void Promise.all([drawYear(picture, document), import("../../pictures/save")]).then(([drawn, { svgText }]) => {
      if (isWanted) setSource(`data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(drawn, "", paper))}`);
    });
    return () => {
      isWanted = false;
    };
  }, [picture, paper]);
  const words = picture.years.map(({ drawn }) => `${drawn.title}: ${yearWords(drawn)}`).join(" ");
  return source === undefined ? (
    <p className="quiet">Drawing …</p>
  ) : (
    <img className="yearPicture" src={source} alt={words} />
  );
};

interface YearPicturesProps {
  readonly network: Network;
  readonly spot: Spot;
  readonly elevation: number;
  readonly stations: readonly Speaking[];
}

const Choices = ({ network, spot, elevation, stations }: YearPicturesProps) => {
  const { save } = usePane();
  const [form, setForm] = useState<string>(STRIP);
  const [kind, setKind] = useState<PictureKind>("png");
  const [paper, setPaper] = useState<Paper>("light");
  const [name, setName] = useState("");
  const [cold, setCold] = useState(COLD);
  const [aside, setAside] = useState(putAside);

  const below = cold.trim() === "" ? NaN : Number(cold.replace(",", ".").replace("−", "-"));
  const isCold = cold.trim() === "" || (below >= -60 && below <= 60);
  const threshold = isCold ? below : NaN;
  const own = estimatedYear(network, spot, elevation, threshold, name.trim() || UNNAMED);
  const beside = stations.find(({ station }) => station.id === form);
  const other =
    form === ASIDE && aside
      ? { ...aside, drawn: { ...aside.drawn, cold: threshold } }
      : beside && stationYear(beside.station, beside.name, threshold);
  const options: readonly (readonly [string, string])[] = [
    [STRIP, "The year as a strip"],
    [RING, "The year as a ring"],
    ...stations.map(({ station, name: called }) => [station.id, `Beside ${called}`] as const),
    ...(aside ? [[ASIDE, `Beside ${aside.drawn.title}, ${aside.drawn.subtitle}`] as const] : []),
  ];
  const picture: YearPicture | undefined = own && {
    form: other ? "pair" : form === RING ? "ring" : "strip",
    years: other ? [own, other] : [own],
  };
  const stable = useStable(picture);
  return (
    <>
      <div className="fields">
        <Select label="Picture" value={form} options={options} onChoose={(one = STRIP) => setForm(one)} wide />
        <Input
          label={`What to call the place (blank: "${UNNAMED}")`}
          value={name}
          onChange={setName}
          autoComplete="off"
          wide
        />
        <Input
          label="Count days with lows below, °C"
          value={cold}
          onChange={setCold}
          autoComplete="off"
          warning={isCold ? undefined : `"${cold}" is no temperature between -60 and 60 °C: no days are counted.`}
          wide
        />
        <Select label="As" value={kind} options={pictureKinds} onChoose={(one = "png") => setKind(one)} />
        <Select label="Paper" value={paper} options={papers} onChoose={(one = "light") => setPaper(one)} />
      </div>
      {stable && picture && (
        <>
          <Shown picture={stable} paper={paper} />
          <Words quiet>Below it stands: {captionOfYear(picture, new Date())}</Words>
          <Act action={saveYear} choice={{ ...picture, kind, paper, document, save, today: new Date() }} />
          <div className="row">
            <Button
              onClick={() => {
                putAside = own;
                setAside(own);
              }}
            >
              Put this place aside, to stand beside another
            </Button>
          </div>
        </>
      )}
    </>
  );
};

/** A place that is half typed has no year: the pictures come back as they were. */
let wasOpen = false;

/** Pictures of the year at the place, worked out once they are asked for. */
export const YearPictures = (props: YearPicturesProps) => {
  const [isOpen, setOpen] = useState(wasOpen);
  return (
    <details
      open={isOpen}
      onToggle={({ currentTarget }) => {
        wasOpen = currentTarget.open;
        setOpen(currentTarget.open);
      }}
    >
      <summary>Pictures of this year, to keep or to post</summary>
      {isOpen && <Choices {...props} />}
    </details>
  );
};
