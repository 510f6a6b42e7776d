import type { CheckFinding, RuleId } from "../../checks/findings.ts";
import type { Units } from "../units.ts";

type Kind = CheckFinding["kind"];
/** Findings of a kind, those that have several kinds among them. */
export type FindingOf<K extends Kind, F = CheckFinding> = F extends { readonly kind: infer Own }
  ? K extends Own
    ? F & { readonly kind: K }
    : never
  : never;

/** What a finding says. `what` goes on from the place it is at, so that it begins in lower case where it has one. */
export interface FindingText {
  readonly what: string;
  /** One thing to do. */
  readonly remedy: string;
  /** Where it comes from, when that is not the rule's own source. */
  readonly source?: string;
}

/** The text of each kind a check may find; a kind without one does not compile. */
export type TextOf<K extends Kind> = {
  readonly [Each in K]: (finding: FindingOf<Each>, units: Units) => FindingText;
};

/** What a rule requires and where that comes from. */
export interface RuleText {
  readonly rule: string;
  readonly source: string;
}

export type RulesOf<Id extends RuleId> = { readonly [Each in Id]: (units: Units) => RuleText };

/** A rule whose text has no figures. */
export function rule(text: string, source: string): () => RuleText {
  return () => ({ rule: text, source });
}
