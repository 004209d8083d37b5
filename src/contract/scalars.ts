/**
 * A plain YAML scalar that other readers turn into something else than text: a number, a boolean or nothing.
 * Its source is kept, so that `1.10` stays 1.10 and a bare `300` can be quoted back.
 */
export class Plain {
  constructor(
    readonly source: string,
    readonly value: number | boolean | null,
  ) {}
}
