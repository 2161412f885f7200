'use strict'
// Starts the language server of Fairlead and keeps its settings true.

const { commands, window, workspace } = require('vscode')
const { LanguageClient, RevealOutputChannelOn } = require('vscode-languageclient/node')

/** The client of the running server, if there is one. */
let client

/** The languages that the server reads: rigs, and notes with rig blocks. */
const documents = ['rig', 'markdown'].flatMap(language =>
  ['file', 'untitled'].map(scheme => ({ language, scheme })))

async function start () {
  const program = workspace.getConfiguration('fairlead').get('path', 'fairlead')
  const started = new LanguageClient('fairlead', 'Fairlead', { command: program, args: ['serve'] }, {
    documentSelector: documents,
    // Findings are asked for as one types, not only when a document is opened.
    diagnosticPullOptions: { onChange: true, onSave: true },
    revealOutputChannelOn: RevealOutputChannelOn.Never
  })
  client = started
  try {
    await started.start()
  } catch (error) {
    if (client === started) client = undefined
    const settings = 'Open the settings'
    const chosen = await window.showErrorMessage(
      `The server ${program} did not start: ${error.message || error}. Install Fairlead, or name its place in fairlead.path.`, settings)
    if (chosen === settings) await commands.executeCommand('workbench.action.openSettings', 'fairlead.path')
  }
}

async function stop () {
  const running = client
  client = undefined
  if (running && running.needsStop()) await running.stop()
}

async function restart () {
  await stop()
  await start()
}

function activate (context) {
  context.subscriptions.push(
    commands.registerCommand('fairlead.restart', restart),
    workspace.onDidChangeConfiguration(event => {
      if (event.affectsConfiguration('fairlead.path')) return restart()
    })
  )
  return start()
}

module.exports = { activate, deactivate: stop }
