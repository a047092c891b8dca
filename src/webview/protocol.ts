/*
 * What the preview's page and the editor tell each other. Types only: both sides import this file and nothing else of the
 * other's. Offsets are UTF-16 units of the unit's text as it was when the screen was made.
 */

export type ViewName = "dealt" | "solved" | "second" | "papers";

/** What a teacher chose to look at. What does not exist (any more) falls back to the first that does. */
export interface Choice {
  /** An activity's title. */
  readonly activity?: string;
  readonly level?: string;
  /** From 1. */
  readonly version?: number;
  readonly view: ViewName;
}

/** Fit the page's width, or percent of the size on paper. */
export type Zoom = "fit" | number;

/** What a page keeps so that it can come back after a reload. */
export interface SavedState {
  /** The unit's URI. */
  readonly unit: string;
  readonly choice: Choice;
  readonly zoom: Zoom;
  /** Pixels. */
  readonly scroll: { readonly x: number; readonly y: number };
}

export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface Entry {
  readonly value: string;
  readonly label: string;
}

/** One sheet as it is drawn; width and height in mm. */
export interface ScreenSheet {
  readonly label: string;
  readonly width: number;
  readonly height: number;
  /** A standalone SVG element. */
  readonly svg: string;
}

/** Sheets under one another; two columns stand side by side. */
export interface Column {
  readonly heading: string;
  readonly sheets: readonly ScreenSheet[];
}

export interface Remark extends Span {
  readonly severity: "error" | "warning" | "information" | "hint";
  readonly message: string;
}

/** Everything that the page shows. A list with fewer than two entries leaves nothing to choose. */
export interface Screen {
  readonly unit: string;
  readonly choice: Choice;
  readonly activities: readonly Entry[];
  readonly levels: readonly Entry[];
  readonly versions: readonly Entry[];
  /** What one of the versions is called: those of an activity at desks are desks. */
  readonly versionName: "Version" | "Desk";
  readonly views: readonly Entry[];
  readonly columns: readonly Column[];
  /** What is known about the number of solutions, or why there is nothing to see. */
  readonly line: string;
  readonly state: "one" | "several" | "none" | "unsettled" | "empty";
  readonly remarks: readonly Remark[];
}

export type ToPage =
  | { readonly type: "show"; readonly screen: Screen }
  /** The cursor is in this item; none where it is in no item. */
  | { readonly type: "light"; readonly span?: Span };

export type FromPage =
  | { readonly type: "ready"; readonly choice?: Choice }
  | { readonly type: "choose"; readonly choice: Choice }
  | { readonly type: "select"; readonly span: Span };
