/** The end of a sentence, with quotation marks and brackets behind its stop. */
export const sentenceEnd = /[.!?…。！？।॥۔։።។؟]\p{P}*$/u;
