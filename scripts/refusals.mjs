import { readdirSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

/**
 * @typedef {{ text: string, kind: "wrong" | "unknown", file: string }} Refused
 *   A sentence that a function may give: what it fills in stands as `…`.
 */

/** What is thrown with a sentence: the second says which terms are meant. */
const REFUSALS = new Set(["Refusal", "Contradiction"]);

/** What stands for the parts of a sentence that are filled in. */
export const GAP = "…";

/**
 * The sentences that each function of the add-in can refuse with, by its id: every `new Refusal` in
 * whatever its code leads to, call by call.
 * @param {string} folder - src
 * @returns {Map<string, Refused[]>}
 */
export function refusals(folder) {
  const files = ["core", "functions"].flatMap((part) =>
    readdirSync(join(folder, part))
      .filter((name) => name.endsWith(".ts"))
      .map((name) => join(folder, part, name)),
  );
  const program = ts.createProgram(files, {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    allowJs: false,
    noEmit: true,
    strict: true,
    types: [],
  });
  const walk = walker(program.getTypeChecker(), folder);
  const found = new Map();
  for (const source of program
    .getSourceFiles()
    .filter(({ fileName }) => files.includes(fileName))) {
    for (const fn of source.statements.filter(ts.isFunctionDeclaration)) {
      const tag = ts.getJSDocTags(fn).find((t) => t.tagName.text === "customfunction");
      const id = ts.getTextOfJSDocComment(tag?.comment)?.trim();
      if (id) found.set(id, walk(fn));
    }
  }
  return found;
}

/**
 * @param {ts.TypeChecker} checker
 * @param {string} folder
 */
function walker(checker, folder) {
  /** What a declaration refuses with itself, and what it leads to; each is looked through once.
   * @type {Map<ts.Node, { own: Refused[], to: ts.Node[] }>} */
  const known = new Map();

  return (/** @type {ts.Node} */ start) => {
    const seen = new Set([start]);
    for (const node of seen) for (const next of at(node).to) seen.add(next);
    const all = [...seen].flatMap((node) => at(node).own);
    return [...new Map(all.map((one) => [one.text, one])).values()];
  };

  function at(/** @type {ts.Node} */ node) {
    const before = known.get(node);
    if (before) return before;
    const found = { own: /** @type {Refused[]} */ ([]), to: /** @type {ts.Node[]} */ ([]) };
    known.set(node, found);
    visit(node, found);
    return found;
  }

  /**
   * @param {ts.Node} node
   * @param {{ own: Refused[], to: ts.Node[] }} found
   */
  function visit(node, found) {
    if (ts.isTypeNode(node)) return;
    if (ts.isNewExpression(node) && REFUSALS.has(node.expression.getText())) {
      const [message, kind] = node.arguments ?? [];
      for (const text of message ? textsOf(message) : [GAP]) {
        // Else it is another's sentence that goes on, with the place added.
        if (/\p{L}{2}.*\p{L}{2}/u.test(text.replace(/^(?:contract|hive) /, "")))
          found.own.push({
            text,
            kind: kind && kind.getText() === '"unknown"' ? "unknown" : "wrong",
            file: node.getSourceFile().fileName.slice(folder.length + 1),
          });
      }
    }
    if (ts.isIdentifier(node)) {
      for (const next of declarationsOf(node)) found.to.push(next);
    }
    ts.forEachChild(node, (child) => visit(child, found));
  }

  /**
   * One sentence, or both of which one is said.
   * @param {ts.Expression} node
   * @returns {string[]}
   */
  function textsOf(node) {
    if (!ts.isConditionalExpression(node)) return [textOf(node)];
    return [...textsOf(node.whenTrue), ...textsOf(node.whenFalse)];
  }

  /**
   * The sentence as far as it is known before it is filled in.
   * @param {ts.Expression} node
   * @returns {string}
   */
  function textOf(node) {
    if (ts.isStringLiteralLike(node)) return node.text;
    if (ts.isParenthesizedExpression(node)) return textOf(node.expression);
    if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) {
      return joined(textOf(node.left), textOf(node.right));
    }
    if (ts.isTemplateExpression(node)) {
      return node.templateSpans.reduce(
        (text, { expression, literal }) => joined(joined(text, textOf(expression)), literal.text),
        node.head.text,
      );
    }
    if (ts.isIdentifier(node)) {
      const [declared] = checker.getSymbolAtLocation(node)?.declarations ?? [];
      const value = declared && ts.isVariableDeclaration(declared) ? declared.initializer : null;
      const isConstant = declared && declared.parent.flags & ts.NodeFlags.Const;
      if (
        value &&
        isConstant &&
        (ts.isStringLiteralLike(value) || ts.isTemplateExpression(value))
      ) {
        return textOf(value);
      }
    }
    if (ts.isCallExpression(node)) {
      const [declared] = checker.getSymbolAtLocation(node.expression)?.declarations ?? [];
      const written =
        declared && "body" in declared ? /** @type {ts.Block} */ (declared.body) : null;
      const [only] = written?.statements ?? [];
      // A function that does nothing but put the sentence together.
      const text = only && ts.isReturnStatement(only) && only.expression && textOf(only.expression);
      if (text && /\p{L}{2}/u.test(text)) return text;
    }
    return GAP;
  }

  /** @param {ts.Identifier} name */
  function declarationsOf(name) {
    let symbol = checker.getSymbolAtLocation(name);
    if (ts.isShorthandPropertyAssignment(name.parent)) {
      symbol = checker.getShorthandAssignmentValueSymbol(name.parent);
    }
    if (symbol && symbol.flags & ts.SymbolFlags.Alias) symbol = checker.getAliasedSymbol(symbol);
    return (symbol?.declarations ?? []).filter(
      (declaration) =>
        !declaration.getSourceFile().isDeclarationFile &&
        (ts.isFunctionDeclaration(declaration) ||
          ts.isMethodDeclaration(declaration) ||
          ts.isGetAccessorDeclaration(declaration) ||
          (ts.isVariableDeclaration(declaration) &&
            ts.isSourceFile(declaration.parent.parent.parent))),
    );
  }
}

/** @param {string} one @param {string} other */
function joined(one, other) {
  return `${one}${other}`.replaceAll(GAP + GAP, GAP);
}
