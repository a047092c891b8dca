import type { Deal, Dealt } from "../../activities/contract";
import { hasClaims, type ShownPair } from "../../activities/dealt-claims";
import type { Claim } from "../../activities/statements";
import { asserted } from "../../activities/truth-proof";
import { fold } from "../../match/fold";
import { heard } from "../../match/heard";
import type { CheckContext } from "../context";

/** Statements that one deal has, what is kept for a tie included. */
export interface Together {
  readonly claims: readonly Claim[];
  /** Pairs that are shown as right or wrong beside them. */
  readonly shown: readonly ShownPair[];
  /** They are said aloud. */
  readonly aloud?: true;
}

/** The written statements of one activity, those of all of its deals. */
export interface WrittenClaims extends Together {
  /** Those of each deal: who has one deal meets no statement of another. */
  readonly hands: readonly Together[];
  /** The activity's own index, alone. */
  readonly activities: readonly number[];
}

/** The written statements of each activity that deals them; twins are made so that they are in nobody's way. */
export function writtenClaims({ activities }: CheckContext): WrittenClaims[] {
  return activities.flatMap(({ plan, dealt }) => {
    const written = writtenIn(dealt);
    return written ? [{ ...written, activities: [plan.index] }] : [];
  });
}

/** Those of what was dealt; undefined where that has no statements. */
function writtenIn(dealt: Dealt<Deal>): Omit<WrittenClaims, "activities"> | undefined {
  if (!hasClaims(dealt)) return undefined;
  const written = (claims: readonly Claim[]): readonly Claim[] =>
    [...claims, ...(dealt.reserve ?? [])].filter(({ twin }) => twin === undefined);
  const aloud = dealt.aloud ? { aloud: dealt.aloud } : {};
  const hands = dealt.hands.map((hand, i) => ({ claims: written(hand), shown: dealt.shownIn?.[i] ?? [], ...aloud }));
  return { claims: written(dealt.claims), shown: dealt.shown ?? [], hands };
}

/** A false statement, and one that says that it is so. */
export interface Contradiction {
  readonly claim: Claim | ShownPair;
  readonly against: Claim | ShownPair;
  /** Some deal has both. */
  readonly together: boolean;
}

/**
 * False ones of which another one says, itself or in its correction, that they are so: one of the same deal, else one of any. Those
 * first that no deal brings together.
 */
export function contradicted({ hands, ...all }: Omit<WrittenClaims, "activities">): Contradiction[] {
  const met = distinct(hands.flatMap(contradictedIn), ({ claim }) => claim.source.start);
  const places = new Set(met.map(({ claim }) => claim.source.start));
  const apart = contradictedIn(all).filter(({ claim }) => !places.has(claim.source.start));
  return [...apart.map((each) => ({ ...each, together: false })), ...met.map((each) => ({ ...each, together: true }))];
}

function contradictedIn({ claims, shown }: Together): Omit<Contradiction, "together">[] {
  const all = [...claims, ...shown];
  const saying = new Map<string | undefined, (Claim | ShownPair)[]>();
  for (const each of all) {
    const said = asserted(each);
    const known = saying.get(said);
    if (known) known.push(each);
    else saying.set(said, [each]);
  }
  return all.flatMap((claim) => {
    if (claim.truth) return [];
    // A false statement whose correction says the same as itself is the matter of `same-correction`.
    const against = saying
      .get(claim.key)
      ?.find((other) => other.item !== claim.item && (other.truth || other.key !== claim.key));
    return against ? [{ claim, against }] : [];
  });
}

/** Statements that say the same as an earlier one of the same deal, or sound the same where they are said aloud. */
export function repeated({ hands }: Pick<WrittenClaims, "hands">): { readonly claim: Claim; readonly first: Claim }[] {
  const found = hands.flatMap(({ claims, aloud }) => {
    const known = new Map<string, Claim>();
    return claims.flatMap((claim) => {
      const said = `${claim.truth} ${aloud ? heard(claim.key) : claim.key}`;
      const first = known.get(said);
      if (!first) known.set(said, claim);
      return first ? [{ claim, first }] : [];
    });
  });
  return distinct(found, ({ claim }) => claim.source.start);
}

function distinct<Each>(all: readonly Each[], placeOf: (each: Each) => number): Each[] {
  const places = new Set<number>();
  return all.filter((each) => !places.has(placeOf(each)) && places.add(placeOf(each)));
}

/** Statements whose correction says the same as they do. */
export function uncorrected(claims: readonly Claim[]): Claim[] {
  return claims.filter(({ correction, key }) => correction !== undefined && fold(correction.text) === key);
}

/** How much is wrong with the statements of what was dealt, by the code of the finding. */
export function claimTroubles(dealt: Dealt<Deal>): ReadonlyMap<string, number> {
  const written = writtenIn(dealt);
  if (!written) return new Map();
  return new Map([
    // What one deal brings together is worse.
    ["contradicting-statements", contradicted(written).reduce((sum, { together }) => sum + (together ? 2 : 1), 0)],
    ["repeated-statement", repeated(written).length],
    ["same-correction", uncorrected(written.claims).length],
  ]);
}
