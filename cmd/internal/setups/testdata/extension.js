// Tries the extension, $EXTENSION, in the stand-in for the editor, with the files of
// $FOLDER, and writes what went wrong to $ERRORS.
'use strict'
const fs = require('fs')
const path = require('path')
const assert = require('assert')
const vscode = require('vscode')
const { held, open, set } = vscode.test
const { EXTENSION, FOLDER, ERRORS } = process.env
const extension = require(EXTENSION)
const manifest = require(path.join(EXTENSION, 'package.json'))

async function await_ (what, test) {
  for (let i = 0; i < 400; i++) {
    const it = await test()
    if (it) return it
    await new Promise(resolve => setTimeout(resolve, 50))
  }
  assert.fail('waited in vain for ' + what + ', have ' + JSON.stringify([...held.diagnostics]))
}

function write (name, text) {
  const file = path.join(FOLDER, name)
  fs.writeFileSync(file, text)
  return file
}

// The errors alone: what else is said of a rig is the linter's matter.
const findings = document => (held.diagnostics.get(document.uri.toString()) || [])
  .filter(d => d.severity === vscode.DiagnosticSeverity.Error)
const never = new vscode.CancellationTokenSource().token

async function run () {
  for (const [name, about] of Object.entries(manifest.contributes.configuration.properties)) held.settings[name] = about.default

  // Without the program the editor says what to do, and goes on.
  held.settings['fairlead.path'] = path.join(FOLDER, 'no such program')
  const context = { subscriptions: [] }
  await extension.activate(context)
  assert.match(held.errors.at(-1), /no such program did not start.*fairlead\.path\.$/)
  set('fairlead.path', manifest.contributes.configuration.properties['fairlead.path'].default)

  const one = open(write('one.rig', `anchor  hüt
load    sack          mass 80 kg
hauler  team
pulley  top   on hüt  holds sack
rope    long

reeve long: sack / hat \\ team  # 🪢
`), 'rig')
  const [found] = await await_('the unknown part', () => findings(one).length === 1 && findings(one))
  assert.match(found.message, /^hat is not a part of this rig/)
  assert.deepStrictEqual([found.range.start.line, found.range.start.character, found.range.end.character], [6, 19, 22])
  assert.strictEqual(found.severity, vscode.DiagnosticSeverity.Error)

  // What is typed is known at once.
  one.change(new vscode.Range(6, 19, 6, 22), 'top')
  await await_('no errors', () => findings(one).length === 0)

  const straight = one.getText()
  one.change(new vscode.Range(0, 7, 0, 8), '')
  one.change(new vscode.Range(4, 0, 4, 0), ' ')
  const edits = await held.providers.formatting.provider.provideDocumentFormattingEdits(one, {}, never)
  for (const e of edits.reverse()) one.change(e.range, e.newText)
  assert.strictEqual(one.getText(), straight)

  const hover = await held.providers.hover.provider.provideHover(one, new vscode.Position(3, 9), never)
  assert.match(JSON.stringify(hover), /top/)

  // Hints can be turned off.
  const hints = () => held.providers.hints.provider.provideInlayHints(one, new vscode.Range(0, 0, 8, 0), never)
  await await_('hints', async () => (await hints()).length > 1)
  set('fairlead.hints.tension', false)
  set('fairlead.hints.advantage', false)
  await await_('no hints', async () => (await hints()).length === 0)

  const notes = open(write('lesson.markdown', '- The rope:\n\n  ```rig\n  anchor  head\n  load    sack\n  rope    long\n  reeve long: sack / hed\n  ```\n'), 'markdown')
  const inNotes = await await_('findings in notes', () => findings(notes).find(d => d.message.startsWith('hed is not')))
  assert.deepStrictEqual([inNotes.range.start.line, inNotes.range.start.character], [6, 21])

  await held.commands['fairlead.restart']()
  one.change(new vscode.Range(6, 19, 6, 22), 'tip')
  await await_('findings of the new server', () => findings(one).length === 1)
  await extension.deactivate()
  assert.strictEqual(held.errors.length, 2, held.errors.join('\n'))
}

run().then(() => '', error => error.stack).then(text => {
  fs.writeFileSync(ERRORS, text)
  process.exit(0)
})
