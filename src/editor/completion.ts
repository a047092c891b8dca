import * as vscode from "vscode";
import { blockAt, settingsBlock } from "./completion/spot";
import { explainAt, type Known, type Suggestion, suggestAt, unitsAt } from "./completion/suggest";
import { settingsOffersAt, wordExplained } from "./language/codes";
import { completeSeverities } from "./providers/complete";
import type { Worlds } from "./providers/worlds";
import type { Readings } from "./readings";
import { toRange, unitSelector } from "./units";

/** Letters bring the list up too, but only inside YAML: the setting for quick suggestions is on for strings, off in prose. */
const triggers = [..." :[,#/"];

const kinds: Readonly<Record<Suggestion["kind"], vscode.CompletionItemKind>> = {
  option: vscode.CompletionItemKind.Property,
  value: vscode.CompletionItemKind.EnumMember,
  section: vscode.CompletionItemKind.Reference,
  unit: vscode.CompletionItemKind.File,
  pile: vscode.CompletionItemKind.Reference,
  activity: vscode.CompletionItemKind.Event,
};

/** Offers options and their values inside activity blocks, plans of stations and the front matter. */
export function completeOptions(readings: Readings, worlds: Worlds): vscode.Disposable {
  return vscode.languages.registerCompletionItemProvider(
    unitSelector,
    {
      async provideCompletionItems(document, position) {
        const text = document.getText();
        const offset = document.offsetAt(position);
        if (!blockAt(text, offset)) return undefined;
        // A reading from before the last keystroke is good enough for names of sections.
        const read = readings.last(document.uri) ?? (await readings.current(document));
        const wanted = unitsAt(text, offset);
        const { unit, activities } = read.reading;
        const known: Known = {
          sections: unit.sections,
          activities: [...activities.map(({ title }) => title), ...activities.map(({ make }) => make)],
          ...(wanted ? { units: await worlds.beside(document, wanted.path) } : {}),
        };
        return suggestAt(text, offset, known).map((suggestion, index) =>
          itemFor(document, position, suggestion, index),
        );
      },
    },
    ...triggers,
  );
}

/** The settings files, where VS Code's own YAML knows no options. */
const settingsSelector: vscode.DocumentSelector = { language: "yaml", pattern: "**/cutwork.{yml,yaml}" };

/** Offers and explains the options of a `cutwork.yml`, unless an extension for YAML is there, which knows them by their schema. */
export function explainSettings(): vscode.Disposable {
  if (vscode.extensions.getExtension("redhat.vscode-yaml")) return new vscode.Disposable(() => {});
  return vscode.Disposable.from(
    completeSeverities(settingsSelector),
    vscode.languages.registerCompletionItemProvider(
      settingsSelector,
      {
        provideCompletionItems(document, position) {
          const text = document.getText();
          return suggestAt(text, document.offsetAt(position), { sections: [] }, settingsBlock(text)).map(
            (suggestion, index) => itemFor(document, position, suggestion, index),
          );
        },
      },
      ...triggers,
    ),
    vscode.languages.registerHoverProvider(settingsSelector, {
      provideHover(document, position) {
        const text = document.getText();
        const offset = document.offsetAt(position);
        const word = wordExplained(text, offset, (at) => settingsOffersAt(text, at));
        return hoverFor(document, explainAt(text, offset, settingsBlock(text)) ?? word);
      },
    }),
  );
}

function itemFor(
  document: vscode.TextDocument,
  position: vscode.Position,
  { label, kind, insert, detail, documentation, start, end, more }: Suggestion,
  index: number,
): vscode.CompletionItem {
  // What a value means stands beside it; an option's own text is longer and comes up in the box for details.
  const beside = kind === "value" ? documentation : detail;
  const short = beside === "" ? label : { label, description: beside };
  const item = new vscode.CompletionItem(short, kinds[kind]);
  item.insertText = insert;
  item.filterText = insert;
  item.documentation = new vscode.MarkdownString(documentation);
  item.range = {
    inserting: new vscode.Range(document.positionAt(start), position),
    replacing: toRange(document, { start, end }),
  };
  // In the order of the schema, which puts first what comes first.
  item.sortText = String(index).padStart(3, "0");
  if (more) item.command = { command: "editor.action.triggerSuggest", title: "Show the values" };
  return item;
}

/** Explains the option or the value under the pointer. */
export function explainOptions(): vscode.Disposable {
  return vscode.languages.registerHoverProvider(unitSelector, {
    provideHover(document, position) {
      return hoverFor(document, explainAt(document.getText(), document.offsetAt(position)));
    },
  });
}

function hoverFor(document: vscode.TextDocument, found: ReturnType<typeof explainAt>): vscode.Hover | undefined {
  return found && new vscode.Hover(new vscode.MarkdownString(found.markdown), toRange(document, found));
}
