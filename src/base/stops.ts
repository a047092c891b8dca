/*
 * What ends a sentence in the scripts that have signs of their own for it, as the inside of a class of a regular expression. After the
 * property Sentence_Terminal of Unicode, values from memory.
 */

/** One of them at the end of a text says nothing. */
export const fullStops = ".。।۔።։។";

/** Full stops, and signs of questions, exclamations and what is left open. */
export const stops = `${fullStops}॥!?…！？؟`;

/** The end of a sentence, with quotation marks and brackets behind its stop. */
export const sentenceEnd = new RegExp(`[${stops}]\\p{P}*$`, "u");
