import type { Proof } from "../../prove/proof";

type Known = Pick<Proof<unknown>, "status" | "count" | "capped" | "accepted">;

/** What a proof says, for the preview. `shown`: a second solution stands beside the first; `early`: a smaller circle can close. */
export function proofSentence(proof: Known, shown: boolean, early = false): string {
  return `${statusSentence(proof, shown)}${early ? " A smaller circle can close while cards are left over." : ""}`;
}

function statusSentence({ status, count, capped, accepted }: Known, shown: boolean): string {
  if (accepted) return `${capped ? "At least " : ""}${count} ways are right, proven; the key tells them.`;
  switch (status) {
    case "one":
      return "One solution, proven.";
    case "several":
      return `${ways(count, capped)} to solve it. ${shown ? "Another one is shown beside the first." : "See “Both solutions”."}`;
    case "none":
      return "It has no solution.";
    case "unsettled":
      return "Not settled: too many possibilities to be sure that there is only one solution.";
  }
}

function ways(count: number, capped: boolean): string {
  const number = count === 2 ? "two" : String(count);
  return capped ? `At least ${number} ways` : `${number === "two" ? "Two" : number} ways`;
}

/** All proofs of a unit in a few words, for the status bar; empty where nothing is dealt. */
export function proofInShort(proofs: readonly Known[]): string {
  if (proofs.length === 0) return "";
  const proven = proofs.filter(({ status, accepted }) => status === "one" || accepted).length;
  const free = proofs.some(({ accepted }) => accepted);
  if (proofs.length === 1 && free) return "right ways proven";
  const what = `proven to have one solution${free ? ", or several that are right" : ""}`;
  if (proven < proofs.length) return `${proven} of ${proofs.length} ${what}`;
  return proofs.length === 1 ? what : `all ${proofs.length} ${what}`;
}
