import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { openTypeface } from "../../src/text/open";
import type { Typeface, TypefaceAssets } from "../../src/text/typeface";

const resolve = createRequire(join(process.cwd(), "package.json")).resolve;

/** The bytes of a file of an installed package, named as an import would name it. */
export function packageFile(specifier: string): Uint8Array {
  return new Uint8Array(readFileSync(resolve(specifier)));
}

function notoSans(style: string): Uint8Array {
  return packageFile(`@expo-google-fonts/noto-sans/${style}/NotoSans_${style}.ttf`);
}

let assets: TypefaceAssets | undefined;

/** The files of the typeface that the product ships with, read from the installed packages once. */
export function testAssets(): TypefaceAssets {
  assets ??= {
    harfbuzz: packageFile("harfbuzzjs/dist/harfbuzz.wasm"),
    harfbuzzSubset: packageFile("harfbuzzjs/dist/harfbuzz-subset.wasm"),
    fonts: {
      regular: notoSans("400Regular"),
      bold: notoSans("700Bold"),
      italic: notoSans("400Regular_Italic"),
      boldItalic: notoSans("700Bold_Italic"),
    },
  };
  return assets;
}

let opened: Promise<Typeface> | undefined;

/** The product's typeface, opened once for all tests. */
export function testTypeface(): Promise<Typeface> {
  opened ??= openTypeface(testAssets());
  return opened;
}
