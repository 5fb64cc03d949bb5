/** The name of an entry that stands for several: "2 x ballast strip". */
export const timesName = ({ name, copies }: { readonly name: string; readonly copies: number }): string =>
  copies > 1 ? `${copies} x ${name}` : name;
