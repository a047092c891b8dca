declare module "logic-solver" {
  interface Formula {
    readonly type: string;
  }
  type Operand = string | Formula;
  class Solver {
    require(...operands: Operand[]): void;
    forbid(...operands: Operand[]): void;
    solve(): { getTrueVars(): string[] } | null;
  }
  const Logic: {
    readonly Solver: typeof Solver;
    exactlyOne(...operands: Operand[]): Operand;
    or(...operands: Operand[]): Operand;
    and(...operands: Operand[]): Operand;
    not(operand: Operand): Operand;
  };
  export default Logic;
}
