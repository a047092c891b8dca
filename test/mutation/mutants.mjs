import { parse } from "@babel/parser";

/*
 * Small faults put into a text of TypeScript, one at a time. A fault replaces the text from `start` to `end` by `now`.
 *
 * Not tried, since the tests could say nothing about them: types, messages of errors, and what stands after `??` or as a
 * default inside a pattern, which in this project mostly tells the compiler that an index is there.
 */

const binary = {
  "+": ["-"],
  "-": ["+"],
  "*": ["/"],
  "/": ["*"],
  "%": ["*"],
  "**": ["*"],
  "<": ["<=", ">="],
  "<=": ["<", ">"],
  ">": [">=", "<="],
  ">=": [">", "<"],
  "===": ["!=="],
  "!==": ["==="],
  "&": ["|"],
  "|": ["&"],
  "^": ["&"],
  "<<": [">>"],
  ">>": ["<<"],
  ">>>": ["<<"],
  "&&": ["||"],
  "||": ["&&"],
  "??": ["&&"],
};

const assigning = {
  "+=": "-=",
  "-=": "+=",
  "*=": "/=",
  "/=": "*=",
  "|=": "&=",
  "&=": "|=",
  "^=": "&=",
  "<<=": ">>=",
  ">>=": "<<=",
  "??=": "=",
};

/** Methods that are exchanged. */
const methods = {
  every: "some",
  some: "every",
  min: "max",
  max: "min",
  floor: "ceil",
  ceil: "floor",
  startsWith: "endsWith",
  endsWith: "startsWith",
};

/** Methods whose call is left out, so that what they are called on stays as it is. */
const droppable = new Set(["filter", "slice", "sort", "reverse", "toSorted", "trim", "trimEnd", "normalize", "flat"]);

/** All faults of a file, in the order of their places. */
export function mutantsOf(file, text) {
  const program = parse(text, { sourceType: "module", plugins: ["typescript"] }).program;
  const found = [];
  const add = (start, end, now) => {
    if (text.slice(start, end) !== now) found.push({ start, end, now });
  };
  const replace = (node, now) => add(node.start, node.end, now);
  /** What stands between two nodes, an operator, by another one. */
  const exchange = (left, right, was, now) => {
    const start = text.indexOf(was, left.end);
    if (start >= 0 && start < right.start) add(start, start + was.length, now);
  };

  const rules = {
    BinaryExpression: ({ left, right, operator }) =>
      binary[operator]?.forEach((now) => void exchange(left, right, operator, now)),
    LogicalExpression: ({ left, right, operator }) =>
      binary[operator]?.forEach((now) => void exchange(left, right, operator, now)),
    AssignmentExpression: ({ left, right, operator }) => {
      if (assigning[operator]) exchange(left, right, operator, assigning[operator]);
    },
    UnaryExpression: ({ operator, start, argument }) => {
      if (operator === "!" || operator === "-" || operator === "~") add(start, argument.start, "");
    },
    UpdateExpression: (node) => {
      const at = node.prefix ? node.start : node.end - 2;
      add(at, at + 2, node.operator === "++" ? "--" : "++");
    },
    IfStatement: ({ test }) => ["true", "false"].forEach((now) => void replace(test, now)),
    ConditionalExpression: ({ test }) => ["true", "false"].forEach((now) => void replace(test, now)),
    WhileStatement: ({ test }) => replace(test, "false"),
    DoWhileStatement: ({ test }) => replace(test, "false"),
    ForStatement: ({ test }) => test && replace(test, "false"),
    BlockStatement: (node) => node.body.length > 0 && replace(node, "{}"),
    ArrowFunctionExpression: ({ body }) => body.type !== "BlockStatement" && add(body.start, body.end, "undefined"),
    StringLiteral: (node) => replace(node, node.value === "" ? '"?"' : '""'),
    TemplateLiteral: (node) => replace(node, "``"),
    BooleanLiteral: (node) => replace(node, String(!node.value)),
    NumericLiteral: (node) => replace(node, String(node.value + 1)),
    BigIntLiteral: (node) => replace(node, `${BigInt(node.value) + 1n}n`),
    ArrayExpression: (node) => node.elements.length > 0 && replace(node, "[]"),
    ObjectExpression: (node) => node.properties.length > 0 && replace(node, "({})"),
    ExpressionStatement: (node) => replace(node, ";"),
    ContinueStatement: (node) => replace(node, ";"),
    BreakStatement: (node) => replace(node, ";"),
    CallExpression: (node) => {
      const { callee } = node;
      if (callee.type !== "MemberExpression" || callee.computed) return;
      const { name } = callee.property;
      if (methods[name]) replace(callee.property, methods[name]);
      if (droppable.has(name)) add(callee.object.end, node.end, "");
    },
  };

  const visit = (node, isPattern = false) => {
    if (Array.isArray(node)) {
      node.forEach((child) => void visit(child, isPattern));
      return;
    }
    if (typeof node?.type !== "string" || isLeftAlone(node)) return;
    if (isPattern && node.type === "AssignmentPattern") {
      visit(node.left);
      return;
    }
    rules[node.type]?.(node);
    for (const [key, child] of Object.entries(node)) {
      if (typeof child !== "object" || child === null || key === "loc" || isFallback(node, key)) continue;
      if (key === "key" && !node.computed) continue;
      visit(child, node.type === "ArrayPattern" || node.type === "ObjectPattern" || (isPattern && key === "value"));
    }
  };
  visit(program);
  found.sort((a, b) => a.start - b.start || b.end - a.end || (a.now < b.now ? -1 : 1));
  return found.map((mutant) => ({ file, ...mutant, ...placeOf(text, mutant) }));
}

const transparent = new Set(["TSAsExpression", "TSNonNullExpression", "TSSatisfiesExpression", "TSParameterProperty"]);

function isLeftAlone({ type, exportKind, callee }) {
  if (type.startsWith("TS")) return !transparent.has(type);
  if (type === "NewExpression") return /Error$/.test(callee.name ?? "");
  return type === "ImportDeclaration" || type === "ExportAllDeclaration" || exportKind === "type";
}

/** Whether a child is what is taken only where the compiler cannot know that something is there. */
function isFallback(node, key) {
  if (key !== "right") return key === "source";
  return node.type === "LogicalExpression" && node.operator === "??" && isPlain(node.right);
}

function isPlain({ type, argument, elements, properties }) {
  if (type === "UnaryExpression") return isPlain(argument);
  return /Literal$/.test(type) || elements?.length === 0 || properties?.length === 0;
}

function placeOf(text, { start, end }) {
  const before = text.slice(0, start);
  const lineStart = before.lastIndexOf("\n") + 1;
  const lineEnd = text.indexOf("\n", start);
  const line = before.split("\n").length;
  const source = text.slice(lineStart, lineEnd < 0 ? undefined : lineEnd).trim();
  return { line, column: start - lineStart + 1, was: text.slice(start, end), source };
}
