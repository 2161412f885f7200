package lsp

import (
	"context"
	"sync"

	"go.lsp.dev/protocol"
)

// refreshing is a set of things that the editor is to ask for again.
type refreshing int

const (
	hintsRefresh refreshing = 1 << iota
	lensesRefresh
	findingsRefresh
)

// refresher asks the editor to ask again: one question at a time, and what comes while
// one is out is asked after it.
type refresher struct {
	refreshMu sync.Mutex
	due       refreshing
	asking    bool
}

// refresh asks the editor to ask again for some things, if it can.
func (s *Server) refresh(what refreshing) {
	if !s.client.refreshHints {
		what &^= hintsRefresh
	}
	if !s.client.refreshLenses {
		what &^= lensesRefresh
	}
	if !s.client.refreshFindings {
		what &^= findingsRefresh
	}
	s.refreshMu.Lock()
	defer s.refreshMu.Unlock()
	s.due |= what
	if s.due == 0 || s.asking {
		return
	}
	s.asking = true
	s.errand(s.askAgain)
}

func (s *Server) askAgain(ctx context.Context) {
	for {
		s.refreshMu.Lock()
		due := s.due
		s.due = 0
		if s.asking = due != 0 && ctx.Err() == nil; !s.asking {
			s.refreshMu.Unlock()
			return
		}
		s.refreshMu.Unlock()
		for what, method := range map[refreshing]string{
			hintsRefresh:    protocol.MethodWorkspaceInlayHintRefresh,
			lensesRefresh:   protocol.MethodWorkspaceCodeLensRefresh,
			findingsRefresh: protocol.MethodWorkspaceDiagnosticRefresh,
		} {
			if due&what != 0 {
				_, err := s.conn.Call(ctx, method, nil, nil)
				s.noteUnlessEnded(ctx, method, err)
			}
		}
	}
}
