// Plays an editor on Node: opens a file, edits it, asks, and writes what came as JSON.
// node client.mjs PROGRAM FILE EDITS RESULT ENCODING
import { spawn } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { dirname } from "node:path";
import {
  CodeActionRequest, CodeLensRequest, CompletionRequest, ConfigurationRequest, DefinitionRequest, DidChangeTextDocumentNotification,
  DidOpenTextDocumentNotification, DocumentDiagnosticRequest, DocumentFormattingRequest, DocumentRangeFormattingRequest,
  DocumentSymbolRequest, ExitNotification, FoldingRangeRequest, HoverRequest, InitializeRequest, InitializedNotification,
  InlayHintRequest, PrepareRenameRequest, PublishDiagnosticsNotification, ReferencesRequest, RegistrationRequest, RenameRequest,
  SelectionRangeRequest, SemanticTokensRequest, ShutdownRequest, StreamMessageReader, StreamMessageWriter, WorkspaceSymbolRequest,
  createProtocolConnection,
} from "vscode-languageserver-protocol/node";

const [program, file, edits, result, encoding] = process.argv.slice(2);
const uri = pathToFileURL(file).href;
const textDocument = { uri };
const server = spawn(program, ["serve", "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
const connection = createProtocolConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));

const waiting = [];
const published = [];
connection.onNotification(PublishDiagnosticsNotification.type, (p) => {
  published.push(p);
  waiting.splice(0).forEach((wake) => wake());
});
connection.onRequest(ConfigurationRequest.type, (p) => p.items.map(() => null));
connection.onRequest(RegistrationRequest.type, () => {});
connection.listen();

async function findings(version) {
  for (;;) {
    const found = published.find((p) => p.uri === uri && p.version === version);
    if (found) return found.diagnostics;
    await new Promise((wake) => waiting.push(wake));
  }
}

// offset gives the place of a position in a text, in what the two have agreed to count.
function offset(text, position) {
  const lines = text.split("\n");
  const before = lines.slice(0, position.line).reduce((n, line) => n + line.length + 1, 0);
  if (encoding === "utf-8") {
    return before + Buffer.from(lines[position.line]).subarray(0, position.character).toString().length;
  }
  return before + position.character;
}

function apply(text, changes) {
  for (const c of changes) {
    text = text.slice(0, offset(text, c.range.start)) + (c.text ?? c.newText) + text.slice(offset(text, c.range.end));
  }
  return text;
}

// backward puts edits of one text in the order in which they can be made one by one.
const backward = (list) => [...list].sort((a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character);

const started = await connection.sendRequest(InitializeRequest.type, {
  processId: process.pid, rootUri: pathToFileURL(dirname(file)).href,
  workspaceFolders: [{ uri: pathToFileURL(dirname(file)).href, name: "yard" }],
  capabilities: {
    general: { positionEncodings: encoding === "utf-8" ? ["utf-8", "utf-16"] : ["utf-16"] },
    workspace: { configuration: true, workspaceFolders: true, workspaceEdit: { documentChanges: true } },
    textDocument: {
      publishDiagnostics: { versionSupport: true, relatedInformation: true, codeDescriptionSupport: true },
      hover: { contentFormat: ["markdown"] },
      documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      rename: { prepareSupport: true },
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix", "refactor", "source"] } } },
    },
  },
});
connection.sendNotification(InitializedNotification.type, {});

let text = readFileSync(file, "utf8");
connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument: { uri, languageId: "rig", version: 1, text } });
const first = await findings(1);
let version = 1;
for (const change of JSON.parse(readFileSync(edits, "utf8"))) {
  version++;
  text = apply(text, [change]);
  connection.sendNotification(DidChangeTextDocumentNotification.type, { textDocument: { uri, version }, contentChanges: [change] });
}
const second = await findings(version);

const all = { start: { line: 0, character: 0 }, end: { line: text.split("\n").length, character: 0 } };
const ask = (type, more) => connection.sendRequest(type, { textDocument, ...more });
const answers = {
  encoding: started.capabilities.positionEncoding, first, second, text,
  symbols: await ask(DocumentSymbolRequest.type),
  hints: await ask(InlayHintRequest.type, { range: all }),
  lenses: await ask(CodeLensRequest.type),
  folds: await ask(FoldingRangeRequest.type),
  tokens: await ask(SemanticTokensRequest.type),
  actions: await ask(CodeActionRequest.type, { range: all, context: { diagnostics: [] } }),
  fixAll: await ask(CodeActionRequest.type, { range: all, context: { diagnostics: [], only: ["source.fixAll"] } }),
  pulled: await ask(DocumentDiagnosticRequest.type),
  found: await connection.sendRequest(WorkspaceSymbolRequest.type, { query: "runner" }),
};

// The rest is asked at the place where the runner is on its hitch.
const line = text.split("\n").findIndex((l) => l.startsWith("pulley") && l.includes("runner"));
const column = text.split("\n")[line].indexOf(" on ") + 5;
const position = { line, character: encoding === "utf-8" ? Buffer.byteLength(text.split("\n")[line].slice(0, column)) : column };
Object.assign(answers, {
  hover: await ask(HoverRequest.type, { position }),
  definition: await ask(DefinitionRequest.type, { position }),
  references: await ask(ReferencesRequest.type, { position, context: { includeDeclaration: true } }),
  completion: await ask(CompletionRequest.type, { position }),
  selection: await ask(SelectionRangeRequest.type, { positions: [position] }),
  prepared: await ask(PrepareRenameRequest.type, { position }),
});
const renamed = await ask(RenameRequest.type, { position, newName: "tractor" });
answers.renamed = apply(text, backward(renamed.documentChanges[0].edits));

// The text as it was first has no errors and can be formatted.
version++;
text = readFileSync(file, "utf8");
connection.sendNotification(DidChangeTextDocumentNotification.type, { textDocument: { uri, version }, contentChanges: [{ text }] });
const options = { tabSize: 2, insertSpaces: true };
answers.formatted = apply(text, backward(await ask(DocumentFormattingRequest.type, { options })));
answers.rangeFormatted = apply(text, backward(await ask(DocumentRangeFormattingRequest.type, { options, range: all })));

await connection.sendRequest(ShutdownRequest.type);
await connection.sendNotification(ExitNotification.type);
answers.status = await new Promise((done) => server.on("exit", done));
writeFileSync(result, JSON.stringify(answers));
