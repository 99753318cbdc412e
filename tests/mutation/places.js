import { parseSync } from 'oxc-parser';

/**
 * The places of a source file where one small change makes another program, each with what to write there.
 *
 * Changed are: arithmetic, comparisons and their boundaries, boolean operators, conditions (negated), constants (one more,
 * one less), smallest and largest, statements (left out), calls that order or pick out (left out), the beginning of a
 * function (returns at once), and the bounds of a slice.
 *
 * Not changed are:
 * - strings and the text of templates: wording is held by the tests of texts, and a changed letter says nothing about logic;
 * - types, `readonly` and imports: nothing of them is left when the program runs, or it does not start;
 * - docstrings: they do not run;
 * - what a thrown error or a `Problem` is made of: its words are texts. That it is thrown is tested: the throw is left out.
 */

const SWAPPED = {
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '&&': ['||'],
  '||': ['&&'],
  '+=': ['-='],
  '-=': ['+='],
  '*=': ['/='],
  '++': ['--'],
  '--': ['++'],
};

/** TypeScript's wrappers of an expression; everything else whose name begins so is a type. */
const WRAPPERS = ['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression'];
const PICKS_OUT = ['sort', 'reverse', 'filter', 'toSorted', 'toReversed'];
const TAKES_BOUNDS = ['slice', 'at', 'subarray'];

const isText = (node) => node.type === 'TemplateLiteral' || (node.type === 'Literal' && typeof node.value === 'string');

/** The method's name where a call is of a method; undefined else. */
function methodOf({ callee }) {
  return callee.type === 'MemberExpression' && !callee.computed ? callee.property.name : undefined;
}

/** The changes at one node of the tree: `{ start, end, text, kind }`, ranges in the file's text. */
function changesAt(node, text) {
  const source = ({ start, end }) => text.slice(start, end);
  const change = (kind, { start, end }, becomes) => ({ kind, start, end, text: becomes });
  /** Swaps an operator that stands between two places. */
  const swap = (kind, from, to) => {
    const between = text.slice(from, to);
    const start = from + between.indexOf(node.operator);
    const end = start + node.operator.length;
    return (SWAPPED[node.operator] ?? []).map((becomes) => change(kind, { start, end }, becomes));
  };
  switch (node.type) {
    case 'BinaryExpression':
      if (node.operator === '+' && (isText(node.left) || isText(node.right))) return [];
      return swap('operator', node.left.end, node.right.start);
    case 'LogicalExpression':
      return swap('boolean', node.left.end, node.right.start);
    case 'AssignmentExpression':
      return swap('operator', node.left.end, node.right.start);
    case 'UpdateExpression':
      return node.prefix
        ? swap('operator', node.start, node.argument.start)
        : swap('operator', node.argument.end, node.end);
    case 'UnaryExpression':
      return node.operator === '!' ? [change('condition', node, `(${source(node.argument)})`)] : [];
    case 'IfStatement':
    case 'WhileStatement':
    case 'DoWhileStatement':
    case 'ConditionalExpression':
      return node.test.type === 'UnaryExpression' ? [] : [change('condition', node.test, `!(${source(node.test)})`)];
    case 'Literal':
      if (typeof node.value !== 'number') return [];
      return [node.value + 1, node.value - 1].map((value) => change('constant', node, `(${value})`));
    case 'ExpressionStatement':
      return node.expression.type === 'Literal' ? [] : [change('left out', node, ';')];
    case 'ThrowStatement':
      return [change('left out', node, ';')];
    case 'FunctionDeclaration':
    case 'FunctionExpression':
    case 'ArrowFunctionExpression':
      if (node.body?.type !== 'BlockStatement' && node.body?.type !== 'FunctionBody') return [];
      return [change('returns at once', { start: node.body.start + 1, end: node.body.start + 1 }, ' return; ')];
    case 'CallExpression': {
      const method = methodOf(node);
      const isBound = source(node.callee).match(/^Math\.(min|max)$/);
      if (isBound) return [change('min and max', node.callee, isBound[1] === 'min' ? 'Math.max' : 'Math.min')];
      if (PICKS_OUT.includes(method)) return [change('left out', { start: node.callee.object.end, end: node.end }, '')];
      if (!TAKES_BOUNDS.includes(method)) return [];
      return node.arguments
        .filter(({ type }) => type !== 'Literal')
        .map((bound) => change('bound', bound, `(${source(bound)}) + 1`));
    }
    default:
      return [];
  }
}

/** The parts of a node in which places are looked for. */
function partsOf(node) {
  if (WRAPPERS.includes(node.type)) return [node.expression];
  if (node.type.startsWith('TS') || node.type === 'ImportDeclaration' || node.type === 'ThrowStatement') return [];
  if (node.type === 'NewExpression' && /^(Problem|MachineFault|Error)$/.test(node.callee.name)) return [];
  const parts = Object.entries(node).flatMap(([name, part]) =>
    name === 'key' && !node.computed ? [] : Array.isArray(part) ? part : [part],
  );
  return parts.filter((part) => typeof part?.type === 'string');
}

/** The parts of a node that run or do not, apart from what is around them. */
const BRANCHES = {
  FunctionDeclaration: ['body'],
  FunctionExpression: ['body'],
  ArrowFunctionExpression: ['body'],
  IfStatement: ['consequent', 'alternate'],
  ConditionalExpression: ['consequent', 'alternate'],
  LogicalExpression: ['right'],
  ForStatement: ['body'],
  ForOfStatement: ['body'],
  ForInStatement: ['body'],
  WhileStatement: ['body'],
};

/** Calls `visit` with every node that can run and the branch within which it stands, outer nodes first. */
function walk(file, text, visit) {
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0].message}`);
  const go = (node, branch) => {
    visit(node, branch);
    const own = (BRANCHES[node.type] ?? []).map((name) => node[name]);
    for (const part of partsOf(node)) go(part, own.includes(part) ? part : branch);
  };
  go(program, undefined);
}

/** All places of a file, each with the beginning of the branch in which it stands, undefined where it runs at import. */
export function placesOf(file, text) {
  const places = [];
  walk(file, text, (node, branch) => {
    for (const change of changesAt(node, text)) {
      places.push({ file, line: text.slice(0, change.start).split('\n').length, branch: branch?.start, ...change });
    }
  });
  return places;
}

/** The file's text in which every branch that runs marks itself in `globalThis.__ran`; `mark` gives it its number. */
export function marked(file, text, mark) {
  const branches = new Set();
  walk(file, text, (_, branch) => branch !== undefined && branches.add(branch));
  const written = [...branches].flatMap(({ type, start, end }) => {
    const note = `__ran[${mark(start)}]=1`;
    if (type === 'BlockStatement' || type === 'FunctionBody') return [{ at: start + 1, opens: `${note};` }];
    if (type.endsWith('Statement'))
      return [
        { at: start, opens: `{${note};` },
        { at: end, closes: '}' },
      ];
    return [
      { at: start, opens: `(${note},(` },
      { at: end, closes: '))' },
    ];
  });
  // At one place inner branches end before outer ones, and outer ones begin before inner ones.
  const pieces = [];
  let from = 0;
  for (const at of [...new Set(written.map((each) => each.at))].sort((a, b) => a - b)) {
    const here = written.filter((each) => each.at === at);
    pieces.push(text.slice(from, at), ...here.map(({ closes = '' }) => closes), ...here.map(({ opens = '' }) => opens));
    from = at;
  }
  return pieces.join('') + text.slice(from);
}
