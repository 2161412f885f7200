// A stand-in for the editor's own module "vscode", as far as the client of a language
// server asks for it: documents that can be opened and changed, and findings that come.
// What is not told here is a thing that takes every call and does nothing.
'use strict'
const fs = require('fs')
const url = require('url')
const { EventEmitter: Emitter } = require('events')

class EventEmitter {
  constructor () {
    this.emitter = new Emitter()
    this.event = (listener, self) => {
      const bound = self ? listener.bind(self) : listener
      this.emitter.on('it', bound)
      return { dispose: () => this.emitter.off('it', bound) }
    }
  }

  fire (it) { this.emitter.emit('it', it) }
  dispose () { this.emitter.removeAllListeners() }
}

class Uri {
  constructor (parts) { Object.assign(this, parts) }
  static file (path) { return Uri.parse(url.pathToFileURL(path).href) }
  static parse (text) {
    const u = new URL(text)
    return new Uri({ scheme: u.protocol.slice(0, -1), authority: u.host, path: decodeURIComponent(u.pathname), query: '', fragment: '', text })
  }

  static from (parts) { return new Uri(parts) }
  with (change) { return new Uri({ ...this, ...change }) }
  get fsPath () { return this.path }
  toString () { return this.text }
  toJSON () { return this.text }
}

class Position {
  constructor (line, character) { this.line = line; this.character = character }
}
class Range {
  constructor (start, end, c, d) {
    this.start = typeof start === 'number' ? new Position(start, end) : start
    this.end = typeof start === 'number' ? new Position(c, d) : end
  }
}
class Diagnostic {
  constructor (range, message, severity) { Object.assign(this, { range, message, severity }) }
}
class TextEdit {
  constructor (range, newText) { Object.assign(this, { range, newText }) }
}
class Location {
  constructor (uri, range) { Object.assign(this, { uri, range }) }
}
class Disposable {
  constructor (end) { this.end = end }
  dispose () { if (this.end) this.end() }
  static from (...list) { return new Disposable(() => list.forEach(d => d.dispose())) }
}
class CancellationTokenSource {
  constructor () { this.token = { isCancellationRequested: false, onCancellationRequested: () => new Disposable() } }
  cancel () { this.token.isCancellationRequested = true }
  dispose () {}
}

class CodeActionKind {
  constructor (value) { this.value = value }
  append (more) { return new CodeActionKind(this.value ? this.value + '.' + more : more) }
}
CodeActionKind.Empty = new CodeActionKind('')
CodeActionKind.QuickFix = new CodeActionKind('quickfix')
CodeActionKind.Refactor = new CodeActionKind('refactor')
CodeActionKind.Source = new CodeActionKind('source')

/** A value that can be called, made, asked and listened to, without effect. */
function anything () {
  return new Proxy(function () {}, {
    get: (target, key) => {
      if (key === Symbol.toPrimitive) return () => 0
      if (key === Symbol.iterator) return [][Symbol.iterator]
      if (key === 'then') return undefined
      if (key === 'prototype') return target.prototype
      if (key === 'dispose') return () => {}
      if (typeof key === 'string' && key.startsWith('on')) return () => new Disposable()
      return anything()
    },
    apply: () => anything(),
    construct: () => ({})
  })
}

/** What the editor holds: for the tests. */
const held = { settings: {}, commands: {}, errors: [], diagnostics: new Map(), providers: {}, documents: [] }
const opened = new EventEmitter()
const changed = new EventEmitter()
const reconfigured = new EventEmitter()
const seen = new EventEmitter()

function matches (selector, document) {
  return [].concat(selector).some(s => (!s.language || s.language === document.languageId) && (!s.scheme || s.scheme === document.uri.scheme))
}

/** A document of the editor. */
class Document {
  constructor (path, languageId) {
    Object.assign(this, { uri: Uri.file(path), fileName: path, languageId, version: 1, isUntitled: false, isClosed: false })
    this.text = fs.readFileSync(path, 'utf8')
  }

  getText () { return this.text }
  get lineCount () { return this.text.split('\n').length }
  offset (p) { return this.text.split('\n').slice(0, p.line).reduce((n, l) => n + l.length + 1, 0) + p.character }
  change (range, text) {
    const start = this.offset(range.start)
    const end = this.offset(range.end)
    this.text = this.text.slice(0, start) + text + this.text.slice(end)
    this.version++
    changed.fire({ document: this, contentChanges: [{ range, text, rangeOffset: start, rangeLength: end - start }] })
  }
}

const languages = overAnything({
  match: (selector, document) => matches(selector, document) ? 10 : 0,
  createDiagnosticCollection: () => ({
    set: (uri, list) => held.diagnostics.set(uri.toString(), list || []),
    delete: uri => held.diagnostics.delete(uri.toString()),
    clear: () => held.diagnostics.clear(),
    forEach: () => {},
    dispose: () => {}
  }),
  registerDocumentFormattingEditProvider: (selector, provider) => provide('formatting', selector, provider),
  registerHoverProvider: (selector, provider) => provide('hover', selector, provider),
  registerInlayHintsProvider: (selector, provider) => provide('hints', selector, provider)
})

function provide (what, selector, provider) {
  held.providers[what] = { selector, provider }
  return new Disposable()
}

/** The settings below a name, as the editor gives them. */
function section (name) {
  const prefix = name ? name + '.' : ''
  return {
    get: (key, usual) => {
      if (prefix + key in held.settings) return held.settings[prefix + key]
      const below = {}
      for (const [k, value] of Object.entries(held.settings)) {
        if (!k.startsWith(prefix + key + '.')) continue
        const path = k.slice((prefix + key + '.').length).split('.')
        path.slice(0, -1).reduce((at, p) => (at[p] ??= {}), below)[path.at(-1)] = value
      }
      return Object.keys(below).length ? below : usual
    }
  }
}

const workspace = overAnything({
  get textDocuments () { return held.documents },
  workspaceFolders: undefined,
  getConfiguration: name => section(name),
  getWorkspaceFolder: () => undefined,
  onDidOpenTextDocument: opened.event,
  onDidChangeTextDocument: changed.event,
  onDidChangeConfiguration: reconfigured.event
})

const commands = overAnything({
  registerCommand: (name, run) => { held.commands[name] = run; return new Disposable() },
  executeCommand: async () => {}
})

const window = overAnything({
  get activeTextEditor () { return this.visibleTextEditors.at(-1) },
  get visibleTextEditors () { return held.documents.map(document => ({ document })) },
  onDidChangeVisibleTextEditors: seen.event,
  tabGroups: overAnything({ all: [] }),
  createOutputChannel: () => overAnything({ append: t => process.stderr.write(t), appendLine: t => process.stderr.write(t + '\n') }),
  showErrorMessage: async message => { held.errors.push(message) }
})

function overAnything (told) {
  const rest = anything()
  return new Proxy(told, { get: (target, key) => key in target ? target[key] : rest[key] })
}

const numbered = new Proxy({}, { get: (target, key) => (target[key] ??= Object.keys(target).length + 1) })

module.exports = new Proxy({
  EventEmitter, Uri, Position, Range, Diagnostic, TextEdit, Location, Disposable, CancellationTokenSource, CodeActionKind,
  languages, workspace, commands, window,
  DiagnosticSeverity: { Error: 0, Warning: 1, Information: 2, Hint: 3 },
  version: '1.91.0',
  env: overAnything({ language: 'en', appName: 'test' }),
  l10n: { t: (text, ...args) => text.replace(/\{(\d)\}/g, (_, i) => args[i]) },
  /** For the tests. */
  test: {
    held,
    open: (path, languageId) => { const d = new Document(path, languageId); held.documents.push(d); seen.fire([]); opened.fire(d); return d },
    set: (name, value) => { held.settings[name] = value; reconfigured.fire({ affectsConfiguration: s => name === s || name.startsWith(s + '.') }) }
  }
}, {
  get: (target, key) => {
    if (!(key in target)) {
      // Classes are made to be extended; sets of names are numbered.
      target[key] = /Kind$|Reason$|Context$|Type$|Tag$|Location$/.test(key) ? numbered : class { constructor (...given) { this.given = given } }
    }
    return target[key]
  }
})
