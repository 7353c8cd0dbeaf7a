import { identityOf, OfficeError, type FakeExcel } from "../excel/fake";

/**
 * A batch as the platform's client sends it to its host: paths say how each object was reached, actions what is done to
 * it. It is answered by the strict stand-in for Excel, object by object and member by member, so that a member reached
 * through a wrong parent, one that is not modelled, or a block of the wrong shape is found out.
 *
 * The form is that of the client's own script (package @microsoft/office-js: `ClientRequestBase`, `ObjectPath`).
 */
interface Arguments {
  readonly Arguments?: readonly unknown[];
  /** In the places of arguments that are objects: their paths. */
  readonly ReferencedObjectPathIds?: readonly unknown[];
}
interface ObjectPath {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: Arguments;
}
interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: Arguments;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}
export interface Batch {
  readonly AutoKeepReference?: boolean;
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

/** The client's numbers for how an object is reached, and for what is done. */
const REACHED = { global: 1, method: 3, property: 4, indexer: 5, reference: 6, nothing: 7 };
const DONE = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5 };

type Held = Record<string, unknown> & { load(names: string): void };
interface Context {
  readonly workbook: Held;
  sync(): Promise<void>;
  /** Looks at something once its turn has come. */
  peek(does: () => void): void;
}
type Call = (...given: unknown[]) => unknown;

/** The client sends a member by its name with a capital, but for these. */
const MEMBERS: Readonly<Record<string, string>> = { Gridlines: "showGridlines" };
const lower = (name: string): string => MEMBERS[name] ?? name.charAt(0).toLowerCase() + name.slice(1);
const upper = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

/** What a reference of the client stands for between two batches. */
interface Kept {
  readonly sheet: string;
  readonly address: string;
}

export class BatchAnswers {
  /** What the stand-in does not know, or what must not be sent: each a fault of the add-in or of the test. */
  readonly faults: string[] = [];
  /** Members in use, by the object that they were asked of. */
  readonly members = new Set<string>();
  private readonly kept = new Map<string, Kept>();

  constructor(private readonly excel: FakeExcel) {}

  async answer(batch: Batch): Promise<object> {
    try {
      return { Results: await this.excel.run((context) => this.perform(batch, context)) };
    } catch (failure) {
      if (!(failure instanceof OfficeError))
        this.faults.push(failure instanceof Error ? (failure.stack ?? failure.message) : String(failure));
      const { code, message } = failure as Partial<OfficeError>;
      return { Error: { Code: code ?? "GeneralException", Message: message ?? "" }, Results: [] };
    }
  }

  private async perform(batch: Batch, context: Context): Promise<object[]> {
    const objects = new Map<number, Held>();
    const pathOf = (id: number): ObjectPath => {
      const path = batch.ObjectPaths[String(id)];
      if (!path) throw new Error(`the batch has no path ${id}`);
      return path;
    };
    /** Arguments with the objects among them in their places. */
    const given = ({ Arguments: values = [], ReferencedObjectPathIds: ids }: Arguments = {}): unknown[] =>
      values.map((value, i) => {
        const id = ids?.[i];
        return typeof id === "number" && id > 0 ? objectOf(id) : value;
      });
    const objectOf = (id: number): Held => {
      const known = objects.get(id);
      if (known) return known;
      const object = reach(pathOf(id));
      objects.set(id, object);
      return object;
    };
    const call = (object: Held, name: string, values: readonly unknown[]): unknown => {
      this.members.add(name);
      return (object[name] as Call)(...values);
    };
    const parentOf = ({ Name: name, ParentObjectPathId: parent }: ObjectPath): Held => {
      if (parent === undefined) throw new Error(`the path to ${name} begins nowhere`);
      return objectOf(parent);
    };
    const reach = (path: ObjectPath): Held => {
      switch (path.ObjectPathType) {
        case REACHED.global:
          return context.workbook;
        case REACHED.method:
          return call(parentOf(path), lower(path.Name), given(path.ArgumentInfo)) as Held;
        case REACHED.property:
          this.members.add(lower(path.Name));
          return parentOf(path)[lower(path.Name)] as Held;
        case REACHED.indexer:
          return call(parentOf(path), "getItem", given(path.ArgumentInfo)) as Held;
        case REACHED.reference: {
          const kept = this.kept.get(path.Name);
          if (!kept) throw new Error(`the reference ${path.Name} was not given`);
          const sheet = call(context.workbook.worksheets as Held, "getItem", [kept.sheet]) as Held;
          return call(sheet, "getRange", [kept.address]) as Held;
        }
        case REACHED.nothing:
          return { load: () => undefined, isNullObject: true };
        default:
          throw new Error(`a path of kind ${path.ObjectPathType} (${path.Name}) is not known`);
      }
    };

    /** Nothing is there, nor anything below it. */
    const isNothing = ({ ObjectPathType: kind, Name: name, Id: id, ParentObjectPathId: parent }: ObjectPath): boolean =>
      kind === REACHED.nothing ||
      (name.endsWith("OrNullObject") && objectOf(id).isNullObject === true) ||
      (parent !== undefined && isNothing(pathOf(parent)));

    const results = batch.Actions.map((action): (() => unknown) => {
      const path = pathOf(action.ObjectPathId);
      const object = objectOf(action.ObjectPathId);
      switch (action.ActionType) {
        case DONE.instantiate: {
          let told: unknown;
          context.peek(() => {
            told = isNothing(path) ? null : this.identity(object, batch.AutoKeepReference === true);
          });
          return () => told;
        }
        case DONE.query:
          return this.query(object, action.QueryInfo?.Select ?? [], () => isNothing(path));
        case DONE.method: {
          if (action.Name.startsWith("_")) return () => null;
          const result = call(object, lower(action.Name), given(action.ArgumentInfo));
          return () => (result as { value?: unknown } | undefined)?.value ?? null;
        }
        case DONE.set:
          this.members.add(lower(action.Name));
          object[lower(action.Name)] = given(action.ArgumentInfo)[0];
          return () => null;
        case DONE.trace:
          return () => null;
        default:
          throw new Error(`an action of kind ${action.ActionType} (${action.Name}) is not known`);
      }
    });
    await context.sync();
    return batch.Actions.map(({ Id }, i) => ({ ActionId: Id, Value: results[i]?.() }));
  }

  /** What the client is told of an object that it met for the first time, by which it finds it again. */
  private identity(object: Held, keeps: boolean): unknown {
    const told = identityOf(object);
    if (!told) return {};
    if ("id" in told) return { Id: told.id };
    if (!keeps) return {};
    const name = `reference ${this.kept.size + 1}`;
    this.kept.set(name, told);
    return { _ReferenceId: name };
  }

  private query(object: Held, select: readonly string[], isNothing: () => boolean): () => unknown {
    const names = select.map(lower);
    for (const name of names) this.members.add(name);
    const told = (one: Held): Record<string, unknown> =>
      Object.fromEntries(names.map((name) => [upper(name), one[name]]));
    const isCollection = "items" in object;
    object.load(names.map((name) => (isCollection ? `items/${name}` : name)).join(","));
    return () => {
      if (isCollection)
        return { _Items: (object.items as Held[]).map((one) => ({ ...told(one), ...named(identityOf(one)) })) };
      return isNothing() ? null : told(object);
    };
  }
}

const named = (told: ReturnType<typeof identityOf>): object => (told && "id" in told ? { Id: told.id } : {});
