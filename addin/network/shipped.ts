import type { Shipped } from "../../taskpane/shipped";
import { network } from "./load";

/** What a page of the add-in fetches from its own address for the pane. */
export const shipped: Shipped = { network };
