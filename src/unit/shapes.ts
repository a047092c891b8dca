/** What an item was read as. */
export type Shape = "pair" | "statement" | "event" | "text";
