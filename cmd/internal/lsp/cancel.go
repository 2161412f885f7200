package lsp

import (
	"context"
	"sync"

	"go.lsp.dev/jsonrpc2"
	"go.lsp.dev/protocol"
)

// cancels stops the work on requests that are being answered.
type cancels struct {
	cancelMu sync.Mutex
	stops    map[jsonrpc2.ID]context.CancelFunc
}

// begin gives the context of the work on a request; stop ends it.
func (s *Server) begin(id jsonrpc2.ID) (work context.Context, stop func()) {
	work, end := context.WithCancel(s.life)
	s.cancelMu.Lock()
	defer s.cancelMu.Unlock()
	if s.stops == nil {
		s.stops = map[jsonrpc2.ID]context.CancelFunc{}
	}
	s.stops[id] = end
	return work, func() {
		s.cancelMu.Lock()
		defer s.cancelMu.Unlock()
		delete(s.stops, id)
		end()
	}
}

// cancel stops the work on a request, if it is still going on.
func (s *Server) cancel(p *protocol.CancelParams) {
	var id jsonrpc2.ID
	switch of := p.ID.(type) {
	case protocol.Integer:
		id = jsonrpc2.NewNumberID(int64(of))
	case protocol.String:
		id = jsonrpc2.NewStringID(string(of))
	}
	s.cancelMu.Lock()
	defer s.cancelMu.Unlock()
	if stop := s.stops[id]; stop != nil {
		stop()
	}
}
