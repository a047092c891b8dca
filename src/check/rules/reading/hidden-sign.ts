import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const hiddenSign = problemRule({
  code: "hidden-sign",
  severity: "error",
  title: "A sign that nobody sees where a line begins",
  hides: true,
  why: "What is pasted from a chat, a web page or a word processor brings signs along that have no width: marks of direction between Arabic or Hebrew and other letters, places where a word may break. Before or in a bullet, a number, the mark of a statement or the signs of a heading they are text, so that Markdown reads no item and no heading there.",
  example: { wrong: inFood("\u200f- mel = honey\n"), right: inFood("- mel = honey\n") },
});
