import { drawdown, isUp } from '../../cloth/drawdown.js';
import { SEEN } from '../../draft/point-of-view.js';
import { judgeFile, writeWhole } from '../../files/whole.js';
import { structureSheet } from '../../gallery/structures/structure-sheet.js';
import { placed } from '../../input/source.js';
import { Problem, quote } from '../../problem.js';
import { structureOf } from '../../search/question/read-classic.js';
import { type Structure, structures, weaveOf } from '../../structure/catalogue/catalogue.js';
import { BLOCK_SHAFTS, MOST_BLOCKS, mostBlocks, sized, tooMany } from '../../structure/model/sized.js';
import type { After, Unit } from '../../structure/model/unit.js';
import { counted } from '../../words/counts.js';
import { bold, EXIT, type Io, say, sayJson, sayLines } from '../shell/io.js';

/** The arguments of the command. */
export interface StructuresArguments {
  readonly name?: string | undefined;
  readonly shafts?: string;
  readonly blocks?: string;
  readonly out?: string;
  readonly seen?: string;
  readonly json?: boolean;
}

/** Lists all structures in short, or one in full, and draws it if asked for. Returns the exit code. */
export async function runStructures(given: StructuresArguments, io: Io): Promise<number> {
  const { name, shafts, blocks, out, seen, json } = given;
  const there = shafts === undefined ? undefined : countOf('shafts', shafts, BLOCK_SHAFTS);
  if (out !== undefined && !out.toLowerCase().endsWith('.png')) {
    throw new Problem(`--out: found ${quote(out)}; expected a name that ends in .png`);
  }
  if (seen !== undefined && out === undefined) throw new Problem('--seen: found it without --out; expected both');
  if (name === undefined) {
    if (out !== undefined) throw new Problem('--out: found it without a structure; expected the name of one to draw');
    if (blocks !== undefined) throw new Problem('--blocks: found it without a structure; expected the name of one');
    if (json) sayJson(io, { format: 'shedlight-structures', version: 1, structures: woven(there).map(plainData) });
    else sayAll(io, there);
    return EXIT.done;
  }
  const from = placed({ value: seen ?? '', place: () => '--seen' }, () => SEEN.read(seen));
  const structure = withBlocks(structureOf(name), blocks, there);
  if (out !== undefined) {
    judgeFile(out);
    writeWhole(out, await structureSheet(structure, from));
  }
  const picture = out === undefined ? {} : { picture: out };
  if (json) sayJson(io, { format: 'shedlight-structure', version: 1, ...plainData(structure), ...picture });
  else for (const line of linesOf(structure, (text) => bold(io.stdout, text))) say(io.stdout, line);
  if (!json && out !== undefined) sayLines(io.stdout, `\nOpen ${bold(io.stdout, out)}`);
  return EXIT.done;
}

/** The structure with the blocks that are asked for, or with as many as the shafts hold. */
function withBlocks(structure: Structure, asked: string | undefined, shafts: number | undefined): Structure {
  const most = shafts === undefined ? undefined : mostBlocks(structure, shafts);
  if (shafts !== undefined && !fits(structure, shafts)) {
    throw new Problem(`--shafts: found ${shafts}; expected ${structure.shafts} at least for ${structure.name}`);
  }
  const blocks = asked === undefined ? most : countOf('blocks', asked, MOST_BLOCKS);
  if (blocks === undefined) return structure;
  const fault = tooMany(structure, blocks, shafts);
  if (fault !== undefined) throw new Problem(`--blocks: ${fault}`);
  return sized(structure, blocks);
}

function countOf(what: 'blocks' | 'shafts', text: string, most: number): number {
  const count = Number(text);
  if (Number.isInteger(count) && count >= 1 && count <= most) return count;
  throw new Problem(`--${what}: found ${quote(text)}; expected ${what} from 1 to ${most}`);
}

/** Whether shafts hold a structure: a weave of blocks needs two of them. */
function fits(structure: Structure, shafts: number): boolean {
  return mostBlocks(structure, shafts) >= Math.min(2, structure.blocks.length);
}

/** The structures that a number of shafts can weave. */
function woven(shafts: number | undefined): readonly Structure[] {
  return shafts === undefined ? structures : structures.filter((each) => fits(each, shafts));
}

function sayAll(io: Io, there: number | undefined): void {
  for (const structure of woven(there)) {
    const { name, shafts, blocks, tabby, tieUp, floatLaw, colour, withBlocks } = structure;
    const count = `${counted(blocks.length, 'block')}`;
    const most =
      there === undefined ? 'more on more shafts' : `up to ${mostBlocks(structure, there)} on ${there} shafts`;
    const more = withBlocks === undefined ? '' : ` (${most})`;
    const sheds =
      tabby === undefined ? 'no tabby' : `tabby ${tabby.map((treadle) => tieUp[treadle]!.join(',')).join(' / ')}`;
    say(io.stdout, bold(io.stdout, name));
    say(io.stdout, `  ${shafts} shafts, ${count}${more}, unit ${unitOf(structure)}; ${sheds}; ${balanceOf(structure)}`);
    say(io.stdout, `  floats: ${floatLaw}`);
    say(io.stdout, `  colour: ${colour}`);
  }
}

/** Words for the ends in a unit: `4 ends`, or `4 to 7 ends` with incidental ends. */
function unitOf(structure: Structure): string {
  const { endUnits } = weaveOf(structure, structure.profile);
  const [least, most] = [Math.min(...endUnits), Math.max(...endUnits)];
  return least === most ? `${counted(least, 'end')}` : `${least} to ${most} ends`;
}

/** Whether the face shows mostly warp or weft; with a pattern weft, the face of the ground alone. */
function balanceOf(structure: Structure): string {
  const weave = weaveOf(structure, structure.profile);
  if (weave.pickKinds.includes('pattern')) return 'balanced ground under a pattern weft';
  if (weave.widths.ground < weave.widths.warp) return 'warp-faced by its sett, the weft being fine';
  const cloth = drawdown(weave);
  let up = 0;
  for (let j = 0; j < cloth.picks; j++) for (let i = 0; i < cloth.ends; i++) if (isUp(cloth, j, i)) up++;
  const share = up / (cloth.ends * cloth.picks);
  // Spots and lace on plain weave count as balanced; a 3/1 twill does not.
  return share > 0.65 ? 'warp-faced' : share < 0.35 ? 'weft-faced' : 'balanced';
}

/** Lines with everything a weaver wants to know about a structure. */
function linesOf(structure: Structure, head: (text: string) => string): string[] {
  const { name, aliases, about, shafts, blocks, profile, tieUp, tabby, manners } = structure;
  const row = (label: string, text: string): string => `  ${label.padEnd(12)}${text}`;
  return [
    head(name) + (aliases.length > 0 ? `, also ${aliases.join(', ')}` : ''),
    about,
    '',
    row('shafts', `${shafts}${structure.withBlocks ? ', more for more blocks' : ''}`),
    row('blocks', `${blocks.join(' ')}; woven as ${profile.join(' ')} where no profile is given`),
    ...blocks.map((block) => row(`  ${block}`, unitInWords(structure.threading.blocks[block]!, '-'))),
    row('tie-up', 'shafts raised by each treadle'),
    ...Object.entries(tieUp).map(([treadle, raised]) => row(`  ${treadle}`, raised.join(' '))),
    row('balance', balanceOf(structure)),
    row('tabby', tabby === undefined ? 'none all over' : tabby.join(' and ')),
    ...manners.flatMap((manner, place) => [
      row('treadling', manner.name + (place === 0 && manners.length > 1 ? ', the usual one' : '')),
      ...(manner.about === undefined ? [] : [row('', manner.about)]),
      ...Object.entries(manner.blocks).map(([block, unit]) => row(`  ${block}`, unitInWords(unit, ' '))),
    ]),
    row('floats', structure.floatLaw),
    row('colour', structure.colour),
    row('enlarging', structure.scale),
    row('source', structure.source),
  ];
}

/** Words for a unit and its exceptions after certain strands. */
function unitInWords<S extends number | string>(unit: Unit<S>, joint: string): string {
  const after = Object.entries<After<S> | undefined>(unit.after ?? {}).flatMap(([last, change]) => {
    if (change === undefined) return [];
    if ('never' in change) return [`never after ${last}: ${change.never}`];
    const first = (change.first ?? []).map((strands) => strands.join(joint)).filter((strands) => strands !== '');
    const lay = change.lay?.join(joint);
    const said = [
      ...(first.length > 0 ? [`put in ${first.join(' or ')}`] : []),
      ...(lay === undefined ? [] : [lay === '' ? 'leave it out' : `lay ${lay}`]),
    ];
    return said.length === 0 ? [] : [`after ${last} ${said.join(' and ')}`];
  });
  return [unit.lay.join(joint), ...after].join('; ');
}

/** A structure without its function, for JSON. */
function plainData({ withBlocks, ...data }: Structure) {
  const structure = { ...data, ...(withBlocks && { withBlocks }) };
  return { ...data, moreBlocks: withBlocks !== undefined, unit: unitOf(structure), balance: balanceOf(structure) };
}
