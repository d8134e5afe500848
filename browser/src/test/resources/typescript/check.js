// Runs the TypeScript compiler, which is loaded already, over files that are handed to it by name.

const given = new Map();
// Kept from one check to the next, since the browser's own types take the longest to read; apart for each way of checking, since what
// the compiler finds out about a name is kept in them.
const runs = { loose: { parsed: new Map() }, strict: { parsed: new Map() } };

/** Files to check from now on, and of the folder /lib what the language and the browser have. */
function give(files) {
  for (const [name, text] of Object.entries(files)) given.set(name, text);
}

function program(kind, { folders, of, text }) {
  const run = runs[kind];
  const host = {
    fileExists: (name) => given.has(name),
    readFile: (name) => given.get(name),
    getSourceFile(name, how) {
      if (name === of) return ts.createSourceFile(name, text, how, true);
      if (!run.parsed.has(name) && given.has(name)) run.parsed.set(name, ts.createSourceFile(name, given.get(name), how, true));
      return run.parsed.get(name);
    },
    getDefaultLibFileName: () => '/lib/lib.d.ts',
    getDefaultLibLocation: () => '/lib',
    getCurrentDirectory: () => '/',
    getCanonicalFileName: (name) => name,
    useCaseSensitiveFileNames: () => true,
    getNewLine: () => '\n',
  };
  const options = {
    allowJs: true,
    checkJs: true,
    noEmit: true,
    skipDefaultLibCheck: true,
    strict: kind === 'strict',
    noUnusedLocals: kind === 'strict',
    noFallthroughCasesInSwitch: kind === 'strict',
    allowUnreachableCode: false,
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    types: [],
    lib: ['lib.es2023.d.ts', 'lib.dom.d.ts', 'lib.dom.iterable.d.ts'],
    rootDirs: folders,
  };
  const own = [...given.keys()].filter((name) => !name.startsWith('/lib/'));
  run.last = ts.createProgram(own, options, host, run.last);
  return run.last;
}

const told = ({ file, start, messageText }) => {
  const at = file ? file.fileName.slice(1) + ':' + (file.getLineAndCharacterOfPosition(start).line + 1) + ' ' : '';
  return at + ts.flattenDiagnosticMessageText(messageText, '\n');
};

/** Complaints as "file:line what": of all files, or of one as if it had another text. The folders are one to what imports. */
function complaints(asked) {
  const all = program('loose', asked);
  return ts.getPreEmitDiagnostics(all, asked.of && all.getSourceFile(asked.of)).map(told);
}

/** As complaints, of files where nothing may be left open: what may be missing, what is any, what is never used. */
function strictComplaints(asked) {
  const all = program('strict', asked);
  return ts.getPreEmitDiagnostics(all, asked.of && all.getSourceFile(asked.of)).map(told);
}

/** Names never used again, == for ===, let for what never changes, and a name that hides another: as "file:line what". */
function habits(asked) {
  const all = program('strict', asked);
  const checker = all.getTypeChecker();
  const found = [];
  for (const file of all.getSourceFiles()) {
    if (asked.of ? file.fileName !== asked.of : !/^(?!\/lib\/).*\.js$/.test(file.fileName)) continue;
    const say = (node, what) => found.push(`${file.fileName.slice(1)}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${what}`);
    const unused = all.getSemanticDiagnostics(file).filter((d) => [6133, 6196, 6198, 6199].includes(d.code));
    found.push(...unused.map(told));
    const written = new Set();
    walk(file, (node) => {
      if (ts.isIdentifier(node) && isWritten(node)) written.add(checker.getSymbolAtLocation(node));
      if (ts.isShorthandPropertyAssignment(node) && isWritten(node)) written.add(checker.getShorthandAssignmentValueSymbol(node));
    });
    walk(file, (node) => {
      if (ts.isBinaryExpression(node) && ['==', '!='].includes(node.operatorToken.getText())) say(node, `${node.operatorToken.getText()} takes unlike things for like`);
      const named = (ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node)) && ts.isIdentifier(node.name);
      if (!named) return;
      const symbol = checker.getSymbolAtLocation(node.name);
      if (isLet(node) && !written.has(symbol)) say(node, `${node.name.text} is never changed, so it is a const`);
      const scope = scopeOf(node);
      const hidden = scope && scope.parent && checker.resolveName(node.name.text, scope.parent, ts.SymbolFlags.Variable | ts.SymbolFlags.Function, true);
      if (hidden && hidden !== symbol && hidden.declarations.some((d) => d.getSourceFile() === file)) say(node, `${node.name.text} hides another ${node.name.text}`);
    });
  }
  return found;
}

function walk(node, see) {
  see(node);
  ts.forEachChild(node, (child) => walk(child, see));
}

// Whether a name stands where it gets a value after it was declared: left of an =, within a pattern there, with ++ or --, or as what a loop runs over.
function isWritten(node) {
  let at = node;
  for (let up = node.parent; up; at = up, up = up.parent) {
    if (ts.isBinaryExpression(up)) {
      const { kind } = up.operatorToken;
      return up.left === at && kind >= ts.SyntaxKind.FirstAssignment && kind <= ts.SyntaxKind.LastAssignment;
    }
    if (ts.isPrefixUnaryExpression(up) || ts.isPostfixUnaryExpression(up)) return [ts.SyntaxKind.PlusPlusToken, ts.SyntaxKind.MinusMinusToken].includes(up.operator);
    if (ts.isForOfStatement(up) || ts.isForInStatement(up)) return up.initializer === at;
    const pattern =
      ts.isArrayLiteralExpression(up) || ts.isObjectLiteralExpression(up) || ts.isSpreadElement(up) || ts.isSpreadAssignment(up) || ts.isParenthesizedExpression(up) ||
      (ts.isPropertyAssignment(up) && up.initializer === at) || (ts.isShorthandPropertyAssignment(up) && up.name === at);
    if (!pattern) return false;
  }
  return false;
}

function isLet(node) {
  let list = node;
  while (list && !ts.isVariableDeclarationList(list)) {
    if (ts.isParameter(list) || ts.isFunctionLike(list)) return false;
    list = list.parent;
  }
  if (!list || !(list.flags & ts.NodeFlags.Let)) return false;
  // One that is declared first and gets its value later cannot be a const.
  return ts.isBindingElement(node) || !!node.initializer || ts.isForOfStatement(list.parent);
}

function scopeOf(node) {
  for (let up = node.parent; up; up = up.parent) {
    if (ts.isFunctionLike(up) || ts.isBlock(up) || ts.isForStatement(up) || ts.isForOfStatement(up) || ts.isForInStatement(up) || ts.isCatchClause(up) || ts.isCaseBlock(up) || ts.isSourceFile(up)) return up;
  }
  return null;
}
