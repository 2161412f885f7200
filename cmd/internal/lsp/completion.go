package lsp

import (
	"context"
	"encoding/json"
	"fmt"

	"go.lsp.dev/protocol"

	"fairlead/cmd/internal/ide"
)

// itemKinds are the protocol's for what a completion offers.
var itemKinds = map[ide.ItemSort]protocol.CompletionItemKind{
	ide.StatementItem: protocol.CompletionItemKindKeyword,
	ide.ClauseItem:    protocol.CompletionItemKindProperty,
	ide.WordItem:      protocol.CompletionItemKindKeyword,
	ide.PartItem:      protocol.CompletionItemKindVariable,
	ide.RigItem:       protocol.CompletionItemKindModule,
	ide.ModelItem:     protocol.CompletionItemKindStruct,
	ide.RuleItem:      protocol.CompletionItemKindFunction,
	ide.UnitItem:      protocol.CompletionItemKindUnit,
	ide.StrokeItem:    protocol.CompletionItemKindOperator,
}

// itemData is what an item of a completion carries until its text is asked for.
type itemData struct {
	Rule string `json:"rule"`
}

// completion gives what may stand at a position.
func (s *Server) completion(_ context.Context, at *ide.Snapshot, p *protocol.CompletionParams) (any, error) {
	list := &protocol.CompletionList{Items: []protocol.CompletionItem{}}
	doc := s.document(at, p.TextDocument.URI)
	if doc == nil {
		return list, nil
	}
	in := s.converter().in(doc.File)
	for i, item := range doc.Complete(in.offset(p.Position)) {
		out := protocol.CompletionItem{
			Label: item.Label, Kind: itemKinds[item.Sort],
			SortText:   protocol.NewOptional(fmt.Sprintf("%04d", i)),
			FilterText: protocol.NewOptional(item.Label),
			TextEdit:   &protocol.TextEdit{Range: in.rangeOf(item.Span), NewText: item.Text},
		}
		if item.Detail != "" {
			out.Detail = protocol.NewOptional(item.Detail)
		}
		switch {
		case item.Doc == "":
		case item.Sort == ide.RuleItem && s.client.resolveDoc:
			out.Data = raw(itemData{Rule: item.Label}) // the pages are long and many
		default:
			out.Documentation = s.markup(item.Doc)
		}
		list.Items = append(list.Items, out)
	}
	return list, nil
}

// resolveCompletion adds the text of an item that was given without.
func (s *Server) resolveCompletion(_ context.Context, _ *ide.Snapshot, item *protocol.CompletionItem) (any, error) {
	var data itemData
	if json.Unmarshal(item.Data, &data) == nil {
		if page, ok := ide.PageOf(data.Rule); ok {
			item.Documentation = s.markup(page.Whole)
		}
	}
	return item, nil
}
