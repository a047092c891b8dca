import type { Report, Rule } from "../../base/finding";
import { fitsPicture } from "../../base/picture";
import { picturesOf } from "../../unit/pictures";
import { type CheckContext, sectionsInUse } from "../context";
import { takingOut } from "./spare";

export const missingPicture: Rule<CheckContext> = {
  code: "missing-picture",
  severity: "error",
  lasting: true,
  title: "A picture that is not there or cannot be printed",
  why: "Pictures are PNG or JPEG files beside the unit, named by a path relative to it. Nothing is fetched from elsewhere. Turned off, it is told as information still, since sheets are made with the words alone.",
  example: {
    wrong: "## Table\n\n- ![a spoon](no-such-file.png) = a colher\n\n```activity\nmake: tiles\n```",
    right: "## Table\n\n- a spoon = a colher\n\n```activity\nmake: tiles\n```",
  },
  check: (context) =>
    sectionsInUse(context).flatMap((section) =>
      picturesOf(section).flatMap((picture): Report[] => {
        const { path, alt, range } = picture;
        const bytes = context.press.pictures.get(path);
        if (bytes && fitsPicture(bytes)) return [];
        const item = section.pairs.find((pair) => pair.block.start <= range.start && range.end <= pair.block.end);
        const word = alt === "" ? [] : [{ title: `Use the word “${alt}” instead`, edits: [{ range, text: alt }] }];
        const fixes = item ? takingOut(context, item, { title: "Take the item out" }, word) : word;
        const elsewhere = /^(?:[a-z][a-z0-9+.-]*:|[/\\])/i.test(path);
        const message = bytes
          ? `“${path}” is neither a PNG nor a JPEG picture that can be printed.`
          : elsewhere
            ? `“${path}” is not taken: pictures are files beside the unit, and nothing is fetched from elsewhere.`
            : `There is no picture “${path}” beside this unit.`;
        return [{ range, message, fixes }];
      }),
    ),
};
