import { texts } from "../functions/texts";
import { supplies } from "./boundary/supplies";

/** What a host that is not short of room has from the start. */
supplies.texts = () => texts;
