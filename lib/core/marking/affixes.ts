// What makers print around the number that names the part. Data, from memory and common practice: a line may be added
// or taken away without touching code, and each makes only extra keys, never fewer. Letters that change what the part
// is (2764A, 6809E) do not belong here.

/** Letters before the number. Taken off only where a digit follows and three or more characters remain. */
export const MAKER_PREFIXES: readonly string[] = [
  "ad am ca cd cy ds dm fd fe ha hcf hd hef hm hn hy icl ics idt ims is km ks la lb lc lf lh lm ls m mb mbm mc",
  "mcm mk mm mos mps msm n nc ne nmc oki pc pd pn ra rc rm s sa sab sc sd se sg sn st sy syp ta tbp tc td tl tlc",
  "tmm tmp tms ts ua uln um upa upb upc upd v va",
]
  .flatMap((line) => line.split(" "))
  .toSorted((a, b) => b.length - a.length);

/** One letter says little: taken off only before four or more digits (D4164, P8255, R6502). */
export const ONE_LETTER_PREFIXES: readonly string[] = ["d", "i", "p", "r", "c"];

/** Prefixes that end in a digit, with what must follow them. */
export const DIGIT_PREFIXES: readonly { letters: string; before: RegExp }[] = [
  // MC14011 is a 4011.
  { letters: "mc1", before: /^4\d{3}/ },
];

/** Letters after the number that say which package, longest first. Taken off only after a digit, `a` or `b`. */
export const PACKAGE_SUFFIXES: readonly string[] = [
  "bcp bcn bey be bf bd bm bn bp cd cj ck cn cp ct cv d db dc dip dp dr dw dwr f fk fn fp h j jc jd jg jl k kc l m n",
  "nl ns nt nw p pc pcc pd pl plcc sc sj sp t ubcp ube ubp v w wm",
]
  .flatMap((line) => line.split(" "))
  .toSorted((a, b) => b.length - a.length);

/** Suffixes that say nothing about the function in one family only. */
export const FAMILY_SUFFIXES: readonly { letters: string; after: RegExp }[] = [
  // Buffered or unbuffered outputs of the 4000 series.
  { letters: "ub", after: /^4[05]\d{2,3}$/ },
  { letters: "b", after: /^4[05]\d{2,3}$/ },
];

/**
 * Cyrillic capitals of chip codes in the Latin letters under which the same codes are listed; without them two
 * different codes would keep nothing but their digits. Common practice, no source.
 */
export const CYRILLIC_LETTERS: Readonly<Record<string, string>> = Object.fromEntries(
  "а:a б:b в:v г:g д:d е:e ж:zh з:z и:i й:j к:k л:l м:m н:n о:o п:p р:r с:s т:t у:u ф:f х:kh ц:ts ч:ch ш:sh щ:sch ъ: ы:y ь: э:e ю:yu я:ya"
    .split(" ")
    .map((pair) => pair.split(":"))
    .map(([from = "", to = ""]) => [from, to]),
);
