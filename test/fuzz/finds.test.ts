import { testWorkshop } from "../support/units";
import { findingsHold, fixHolds, meaningHolds } from "./laws";

/* Texts that broke the law of fixes once, as they were shrunk. */

const finds: Readonly<Record<string, string>> = {
  "a comment behind a title of several lines": "---\ntitle: The café\n - ☀ #5 = ☀\n\n",
  "two characters that cannot be printed with a space between them":
    "## One\n\n```activity\nmake: tiles\n```\n\n- 水 水\npão = pão\n\n\n\n",
  "an equals sign at the end of a line":
    "## One\n\n- pão = *b*  = \n−  |  = pão\n\n- \n\n```activity\nmake: tiles\n```\n",
  "a line with a box below one without its bullet":
    "## One\n\n- a = b\n- c = d\n\n    - pão\n•  = |\n[x]  = \n- pão = pão\n\n```activity\nmake: tiles\n```\n",
  "two equals signs at the end of a line": "## One\n\n-  =  = \n•  |  = !\n9. = \n\n```activity\nmake: tiles\n```\n",
  "two equals signs above a line with two":
    "## One\n\n-  |  =  = \n\t10.  =  = \n- pão = pão\n\n-  |  = \n- \n\n```activity\nmake: tiles\n```\n",
  "a line without its bullet above one with a number":
    "## One\n\n- [x] \n-pão = pão\n9.pão = pão\n\n- a = b\n- c = d\n- e = f\n- g = h\n\n```activity\nmake: tiles\n```\n",
  "a line that ends in a lone return, before which another one is put":
    "## One\r\r- pão = pão\r| pão |\r| --- |\r\r```activity\rmake: tiles\r```\r\r",
  "too many spaces behind two bullets, one below the other":
    "− pão = pão\n- \n\n-      [x] \n    -      pão = pão\n\n```activity\nmake: tiles\n```\n\n",
  "a mark beside one that is told only among statements":
    "## One\n\n- [## x\n- [×] A roda ri.\n- [○] A luz arde.\n\n```activity\nmake: sort\n```\n",
  "two backticks in the last line": "## One\n\n- pão = pão\n\n```activity\nmake: tiles\n- x = y\n``",
  "an activity indented below one without an end":
    "```activity\nmake: tiles\n   ```activity\n   make: tiles\n   ```\n\n- \n\n",
  "two pictures in one statement, of one file that is missing":
    "## One\n\n- [x] ![b](y.png) ![b](y.png)\n\n```activity\nmake: tiles\n```\n\n## One\n\n",
  "a colon in a value of an activity within one that is no mapping":
    "```activity\nmake: tiles\n\n- ![a][x.png] |  = \n-  = \n\n- pão\n\n   ```Activity\n   make: tiles\n   from: At: noon\n   ```\n\n- pão = pão\n\n",
  "an option four times, of which one has no space":
    "```activity\nmake: tiles\nfrom: [One #2, *Two]\nfrom:One\nfrom: [Bread, butter]\nfrom: #3\n```\n\n## One\n\n",
};

describe("texts that broke a law", () => {
  for (const [what, text] of Object.entries(finds)) {
    it(what, async () => {
      const workshop = await testWorkshop();
      findingsHold(workshop, text);
      for (let pick = 0; pick < 12; pick++) fixHolds(workshop, text, pick);
      for (const tail of ["\n", "\n\n"]) meaningHolds(text, tail);
    });
  }
});
