// Runs the TypeScript compiler, which is loaded already, over files that are handed to it by name.

const given = new Map();
const parsed = new Map(); // kept from one check to the next, since the browser's own types take the longest to read
let last;

/** Files to check from now on, and of the folder /lib what the language and the browser have. */
function give(files) {
  for (const [name, text] of Object.entries(files)) given.set(name, text);
}

/** Complaints as "file:line what": of all files, or of one as if it had another text. The folders are one to what imports. */
function complaints({ folders, of, text }) {
  const host = {
    fileExists: (name) => given.has(name),
    readFile: (name) => given.get(name),
    getSourceFile(name, how) {
      if (name === of) return ts.createSourceFile(name, text, how);
      if (!parsed.has(name) && given.has(name)) parsed.set(name, ts.createSourceFile(name, given.get(name), how));
      return parsed.get(name);
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
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    types: [],
    lib: ['lib.es2023.d.ts', 'lib.dom.d.ts', 'lib.dom.iterable.d.ts'],
    rootDirs: folders,
  };
  const own = [...given.keys()].filter((name) => !name.startsWith('/lib/'));
  last = ts.createProgram(own, options, host, last);
  return ts.getPreEmitDiagnostics(last, of && last.getSourceFile(of)).map(({ file, start, messageText }) => {
    const at = file ? file.fileName.slice(1) + ':' + (file.getLineAndCharacterOfPosition(start).line + 1) + ' ' : '';
    return at + ts.flattenDiagnosticMessageText(messageText, '\n');
  });
}
