package lsp

import (
	"fmt"
	"slices"

	"go.lsp.dev/jsonrpc2"
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/cmd/internal/ide"
)

// initialize takes what the editor can do, and says what the server can.
func (s *Server) initialize(params []byte) (any, error) {
	if s.state != strange {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidRequest, "initialize comes once")
	}
	var p protocol.InitializeParams
	if err := protocol.Unmarshal(params, &p); err != nil {
		return nil, fmt.Errorf("%w: %w", jsonrpc2.ErrInvalidParams, err)
	}
	s.state = serving
	s.client = abilitiesOf(&p.Capabilities)
	s.wide = !s.client.bytes
	s.mu.Lock()
	s.settings = s.settings.with(p.InitializationOptions)
	s.roots = rootsOf(&p)
	s.mu.Unlock()
	return &protocol.InitializeResult{
		Capabilities: s.capabilities(),
		ServerInfo:   protocol.ServerInfo{Name: "fairlead", Version: protocol.NewOptional(s.Version)},
	}, nil
}

// rootsOf gives the folders that the editor works in.
func rootsOf(p *protocol.InitializeParams) []uri.URI {
	var roots []uri.URI
	folders, _ := p.WorkspaceFolders.Get()
	for _, f := range folders {
		roots = append(roots, f.URI)
	}
	if len(roots) == 0 && p.RootURI != nil {
		roots = append(roots, *p.RootURI)
	}
	if path, ok := p.RootPath.Get(); len(roots) == 0 && ok && path != "" {
		roots = append(roots, uri.File(path))
	}
	return roots
}

// capabilities is what the server can do for this editor.
func (s *Server) capabilities() protocol.ServerCapabilities {
	yes := true
	sync := protocol.TextDocumentSyncKindIncremental
	encoding := protocol.PositionEncodingKindUTF16
	if !s.wide {
		encoding = protocol.PositionEncodingKindUTF8
	}
	c := protocol.ServerCapabilities{
		PositionEncoding: encoding,
		TextDocumentSync: &protocol.TextDocumentSyncOptions{OpenClose: &yes, Change: &sync, Save: protocol.Boolean(true)},
		HoverProvider:    protocol.Boolean(true),
		CompletionProvider: &protocol.CompletionOptions{
			TriggerCharacters: []string{":", "(", "/", `\`, "~"}, ResolveProvider: &yes,
		},
		DefinitionProvider:              protocol.Boolean(true),
		ReferencesProvider:              protocol.Boolean(true),
		DocumentHighlightProvider:       protocol.Boolean(true),
		DocumentSymbolProvider:          protocol.Boolean(true),
		WorkspaceSymbolProvider:         protocol.Boolean(true),
		FoldingRangeProvider:            protocol.Boolean(true),
		SelectionRangeProvider:          protocol.Boolean(true),
		InlayHintProvider:               protocol.Boolean(true),
		CodeLensProvider:                &protocol.CodeLensOptions{},
		DocumentFormattingProvider:      protocol.Boolean(true),
		DocumentRangeFormattingProvider: protocol.Boolean(true),
		RenameProvider:                  protocol.Boolean(true),
		CodeActionProvider: &protocol.CodeActionOptions{CodeActionKinds: []protocol.CodeActionKind{
			protocol.CodeActionKindQuickFix, protocol.CodeActionKindRefactorRewrite, protocol.CodeActionKindSourceFixAll,
		}},
		DiagnosticProvider:     &protocol.DiagnosticOptions{InterFileDependencies: true},
		ExecuteCommandProvider: protocol.ExecuteCommandOptions{Commands: commandNames()},
		SemanticTokensProvider: &protocol.SemanticTokensOptions{
			Legend: protocol.SemanticTokensLegend{TokenTypes: ide.TokenSorts, TokenModifiers: []string{"declaration"}},
			Full:   protocol.Boolean(true), Range: protocol.Boolean(true),
		},
		Workspace: &protocol.WorkspaceOptions{WorkspaceFolders: &protocol.WorkspaceFoldersServerCapabilities{
			Supported: &yes, ChangeNotifications: protocol.Boolean(true),
		}},
	}
	if s.client.prepareRename {
		c.RenameProvider = &protocol.RenameOptions{PrepareProvider: &yes}
	}
	return c
}

// abilities is what the editor can do, as far as the server asks.
type abilities struct {
	bytes                                        bool // positions may count bytes
	markdown                                     bool // hovers and completions show Markdown
	documentChanges                              bool // edits name the version of their document
	actions                                      bool // actions are more than commands
	resolveDoc                                   bool // an item of a completion may get its text later
	nestedSymbols                                bool
	prepareRename                                bool
	related, tags, links                         bool // of findings
	versions                                     bool // findings name the version of their document
	pull                                         bool // the editor asks for findings
	configuration, configurationChanges          bool
	watches                                      bool
	showDocument                                 bool
	refreshHints, refreshLenses, refreshFindings bool
}

// abilitiesOf reads what the editor says of itself. What it does not say it cannot.
func abilitiesOf(c *protocol.ClientCapabilities) abilities {
	var a abilities
	if g := c.General; g != nil {
		a.bytes = prefersBytes(g.PositionEncodings)
	}
	if w := c.Window; w != nil && w.ShowDocument != nil {
		a.showDocument = w.ShowDocument.Support
	}
	if w := c.Workspace; w != nil {
		a.ofWorkspace(w)
	}
	if t := c.TextDocument; t != nil {
		a.ofText(t)
	}
	return a
}

// prefersBytes says whether UTF-8 comes before UTF-16, without which every editor counts
// in that.
func prefersBytes(list []protocol.PositionEncodingKind) bool {
	narrow := slices.Index(list, protocol.PositionEncodingKindUTF8)
	wide := slices.Index(list, protocol.PositionEncodingKindUTF16)
	return narrow >= 0 && (wide < 0 || narrow < wide)
}

func (a *abilities) ofWorkspace(w *protocol.WorkspaceClientCapabilities) {
	a.configuration = is(w.Configuration)
	a.documentChanges = w.WorkspaceEdit != nil && is(w.WorkspaceEdit.DocumentChanges)
	a.configurationChanges = w.DidChangeConfiguration != nil && is(w.DidChangeConfiguration.DynamicRegistration)
	a.watches = w.DidChangeWatchedFiles != nil && is(w.DidChangeWatchedFiles.DynamicRegistration)
	a.refreshHints = w.InlayHint != nil && is(w.InlayHint.RefreshSupport)
	a.refreshLenses = w.CodeLens != nil && is(w.CodeLens.RefreshSupport)
	a.refreshFindings = w.Diagnostics != nil && is(w.Diagnostics.RefreshSupport)
}

func (a *abilities) ofText(t *protocol.TextDocumentClientCapabilities) {
	a.pull = t.Diagnostic != nil
	a.markdown = t.Hover != nil && slices.Contains(t.Hover.ContentFormat, protocol.MarkupKindMarkdown)
	a.nestedSymbols = t.DocumentSymbol != nil && is(t.DocumentSymbol.HierarchicalDocumentSymbolSupport)
	a.prepareRename = t.Rename != nil && is(t.Rename.PrepareSupport)
	a.actions = t.CodeAction != nil && len(t.CodeAction.CodeActionLiteralSupport.CodeActionKind.ValueSet) > 0
	if c := t.Completion; c != nil && c.CompletionItem != nil {
		a.resolveDoc = slices.Contains(c.CompletionItem.ResolveSupport.Properties, "documentation")
	}
	list := []*protocol.DiagnosticsCapabilities{}
	if p := t.PublishDiagnostics; p != nil {
		a.versions = is(p.VersionSupport)
		list = append(list, &p.DiagnosticsCapabilities)
	}
	if t.Diagnostic != nil {
		list = append(list, &t.Diagnostic.DiagnosticsCapabilities)
	}
	for _, d := range list {
		a.related = a.related || is(d.RelatedInformation)
		a.links = a.links || is(d.CodeDescriptionSupport)
		a.tags = a.tags || slices.Contains(d.TagSupport.ValueSet, protocol.DiagnosticTagUnnecessary)
	}
}

func is(b *bool) bool { return b != nil && *b }
