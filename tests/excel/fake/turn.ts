import { OfficeError, type HeldWorkbook } from "./workbook";

/** By what an object is found again in a later turn: a sheet or a chart by its id, a range by its place. */
export type Identity = { readonly id: string } | { readonly sheet: string; readonly address: string };
const identities = new WeakMap<object, () => Identity>();
export const identityOf = (object: object): Identity | undefined => identities.get(object)?.();
export const identified = <T extends object>(object: T, identity: () => Identity): T => {
  identities.set(object, identity);
  return object;
};

/** One turn of talk: what is asked is kept until `sync`, and then done in its order. */
export const openTurn = (excel: HeldWorkbook) => {
  let pending: (() => void)[] = [];
  let broken = false;

  /** Counts a call, and fails it where that is asked for. */
  const count = (what: string): void => {
    excel.calls++;
    if (what === "sync") excel.turns.push([]);
    else excel.turns.at(-1)?.push(what);
    if (excel.failAt !== undefined && (excel.stuck ? excel.calls >= excel.failAt : excel.calls === excel.failAt)) {
      throw new OfficeError(excel.failWith, `call ${excel.calls}, ${what}, failed`);
    }
  };
  const queue = (what: string, does: () => void): void => {
    if (broken) throw new Error(`${what} was asked of an object of a turn that failed`);
    pending.push(() => {
      count(what);
      does();
    });
  };

  /** A null object has nothing to load, and does not mind: whether it is one is known when its turn comes. */
  const forgiving = <T extends object>(name: string, members: T, isNull: () => boolean | undefined): T => {
    const loading = members as { load: (wanted: string | string[]) => void };
    const { load } = loading;
    loading.load = (wanted) => {
      queue(`${name}.load`, () => undefined);
      pending.push(() => {
        if (isNull()) return;
        const waiting = pending;
        pending = [];
        load(wanted);
        const now = pending;
        pending = waiting;
        now.forEach((does) => does());
      });
    };
    return members;
  };

  /** An object that knows the members listed, and no other. */
  const strict = <T extends object>(name: string, members: T): T =>
    new Proxy(members, {
      get: (target, member) => {
        if (typeof member === "symbol" || member === "then" || member === "toJSON") return undefined;
        if (!(member in target)) throw new Error(`${name}.${member} is not modelled`);
        return Reflect.get(target, member) as unknown;
      },
      set: (target, member, value) => {
        const settable = Object.getOwnPropertyDescriptor(target, member);
        if (!settable?.set) throw new Error(`${name}.${String(member)} is not modelled for writing`);
        settable.set.call(target, value);
        return true;
      },
    });

  /** Members that are read: they hold something once they are loaded and synchronised. */
  const loads = (name: string, values: Record<string, () => unknown>) => {
    const known = new Map<string, unknown>();
    const members: Record<string, unknown> = {
      load: (wanted: string | string[]) => {
        const names = (Array.isArray(wanted) ? wanted : wanted.split(",")).map((one) => one.trim());
        for (const one of names) if (!(one in values)) throw new Error(`${name}.${one} is not modelled`);
        queue(`${name}.load`, () => names.forEach((one) => known.set(one, (values[one] as () => unknown)())));
      },
    };
    for (const one of Object.keys(values)) {
      Object.defineProperty(members, one, {
        enumerable: true,
        configurable: true,
        get: () => {
          if (!known.has(one))
            throw new OfficeError("PropertyNotLoaded", `${name}.${one} was read before it was loaded`);
          return known.get(one);
        },
      });
    }
    return members;
  };
  /** An answer that is there once the turn is done. */
  const later = (what: string, answer: () => unknown): object => {
    let known: { readonly value: unknown } | undefined;
    queue(what, () => (known = { value: answer() }));
    return Object.defineProperty({}, "value", {
      get: () => {
        if (!known) throw new OfficeError("ValueNotLoaded", `${what} was read before sync`);
        return known.value;
      },
    });
  };
  /** Members that are only written, and told to the tab. */
  const written = (name: string, tell: (line: string) => void, members: readonly string[], more: object = {}) => {
    const object = Object.defineProperties({}, Object.getOwnPropertyDescriptors(more));
    for (const member of members) {
      Object.defineProperty(object, member, {
        get: () => {
          throw new Error(`${name}.${member} is only written`);
        },
        set: (value: unknown) => queue(`${name}.${member}`, () => tell(`${name}.${member} = ${JSON.stringify(value)}`)),
      });
    }
    return strict(name, object);
  };

  const sync = async (): Promise<void> => {
    if (broken) throw new Error("a turn that failed was asked to go on");
    const now = pending;
    pending = [];
    try {
      count("sync");
      excel.beforeSync();
      excel.syncs++;
      // A step may put further steps in its own place.
      for (const step of now) step();
    } catch (failure) {
      broken = true;
      throw failure;
    }
    await Promise.resolve();
  };
  /** For the fake alone: looks at something when its turn comes, without being a call of its own. */
  const peek = (does: () => void): void => void pending.push(does);
  return { peek, queue, forgiving, strict, loads, later, written, sync, waits: () => pending.length > 0 };
};
export type Turn = ReturnType<typeof openTurn>;
