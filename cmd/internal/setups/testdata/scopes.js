// Reads {grammars: {scope: file}, texts: [{scope, text}]} and writes, for each text, its
// lines, each as a list of [start, end, scopes…]: what the grammars make of it.
// Columns are UTF-16 code units.
'use strict'
const fs = require('fs')
const path = require('path')
const { Registry, parseRawGrammar, INITIAL } = require('vscode-textmate')
const oniguruma = require('vscode-oniguruma')

async function main () {
  const { grammars, injections, texts } = JSON.parse(fs.readFileSync(0, 'utf8'))
  const wasm = path.join(path.dirname(require.resolve('vscode-oniguruma')), 'onig.wasm')
  await oniguruma.loadWASM(fs.readFileSync(wasm).buffer)
  const registry = new Registry({
    onigLib: Promise.resolve({
      createOnigScanner: patterns => new oniguruma.OnigScanner(patterns),
      createOnigString: s => new oniguruma.OnigString(s)
    }),
    loadGrammar: async scope => {
      let file = grammars[scope]
      if (!file) return null
      if (file.startsWith('tm-grammars/')) file = require.resolve(file)
      return parseRawGrammar(fs.readFileSync(file, 'utf8'), file)
    },
    getInjections: scope => (injections || {})[scope]
  })
  const out = []
  for (const { scope, text } of texts) {
    const grammar = await registry.loadGrammar(scope)
    let state = INITIAL
    out.push(text.split(/\r?\n/).map(line => {
      const read = grammar.tokenizeLine(line, state)
      state = read.ruleStack
      return read.tokens.map(t => [t.startIndex, t.endIndex, t.scopes.slice(1)])
    }))
  }
  process.stdout.write(JSON.stringify(out))
}

main().catch(e => { console.error(e); process.exit(1) })
