/** Items that are in order. */
export const pairs = "- pão = bread\n- mel = honey\n- sal = salt\n- chá = tea\n";
/** An activity, to go behind a section. */
export const tiles = "\n```activity\nmake: tiles\n```";
/** A unit with one more item among its pairs, text behind them, and an activity that uses the section. */
export const inFood = (item: string, after = ""): string => `## Food\n\n${pairs}${item}\n${after}${tiles}`;
