package lsp

import (
	"context"
	"errors"
	"io"
	"sync"

	"go.lsp.dev/jsonrpc2"
	"go.lsp.dev/protocol"
	"go.lsp.dev/uri"

	"fairlead/cmd/internal/ide"
	"fairlead/lint/rules"
)

// Server serves one editor over one connection.
type Server struct {
	// Version is what the server calls its own version.
	Version string

	desk  *ide.Desk
	pages pages
	conn  jsonrpc2.Conn

	// state, client and wide are set while the connection reads one message after
	// another; whoever runs beside it was started after that.
	state  state
	left   bool // the editor said exit
	client abilities
	wide   bool

	mu        sync.Mutex
	settings  settings
	roots     []uri.URI
	documents map[string]*document

	// errands are what runs beside the requests: looking for findings, asking the editor.
	errands sync.WaitGroup
	// ended closes when the editor says exit.
	ended chan struct{}
	// life ends with the connection.
	life context.Context
	refresher
	cancels
}

// state says how far the conversation is.
type state int

const (
	strange  state = iota // before initialize
	serving               // between initialize and shutdown
	shutDown              // only exit is left
)

// document is one text that the editor has open.
type document struct {
	path string
	uri  uri.URI
	// publishing is held while its findings are sent, so that none are sent after it
	// is closed.
	publishing sync.Mutex
	closed     bool
	// wanted is the snapshot whose findings are wanted; running says that they are being
	// looked for. Both are guarded by Server.mu.
	wanted  int
	running bool
	// last is the document as findings were last found; nil before. Guarded by Server.mu.
	last *ide.Document
}

// ErrAbandoned says that the editor went without saying shutdown first.
var ErrAbandoned = errors.New("the editor ended the conversation without shutdown")

// New makes a server.
func New(version string) *Server {
	return &Server{
		Version: version, desk: ide.NewDesk(rules.All()), settings: usual(),
		documents: map[string]*document{}, ended: make(chan struct{}),
	}
}

// Serve talks to an editor until it says exit, or its end of the streams closes. It
// closes nothing itself.
func (s *Server) Serve(in io.Reader, out io.Writer) error {
	life, end := context.WithCancel(context.Background())
	s.life = life
	s.conn = jsonrpc2.NewConn(jsonrpc2.NewHeaderStream(&streams{Reader: ending{in, end}, Writer: out}), jsonrpc2.WithCodec(codec{}))
	s.conn.Go(life, s.handler())
	select {
	case <-s.conn.Done():
	case <-s.ended:
	}
	end()
	s.errands.Wait()
	if s.state != shutDown {
		return errors.Join(ErrAbandoned, s.conn.Err())
	}
	return nil
}

// streams are the two ends of the conversation, which are not ours to close.
type streams struct {
	io.Reader
	io.Writer
}

func (*streams) Close() error { return nil }

// ending is a reader that calls a function when it has no more to read.
type ending struct {
	io.Reader
	end func()
}

func (e ending) Read(b []byte) (int, error) {
	n, err := e.Reader.Read(b)
	if err != nil {
		e.end()
	}
	return n, err
}

// codec writes and reads what messages carry: the unions of the protocol need its own.
type codec struct{}

func (codec) Marshal(v any) ([]byte, error) {
	if raw, is := v.(jsonrpc2.RawMessage); is && raw != nil {
		return raw, nil
	}
	return protocol.Marshal(v)
}

func (codec) Unmarshal(data []byte, v any) error {
	if raw, is := v.(*jsonrpc2.RawMessage); is {
		*raw = append(jsonrpc2.RawMessage(nil), data...)
		return nil
	}
	return protocol.Unmarshal(data, v)
}

// errand runs something beside the requests, for as long as the connection lives.
func (s *Server) errand(run func(ctx context.Context)) {
	s.errands.Add(1)
	go func() {
		defer s.errands.Done()
		defer s.survive("an errand")
		run(s.life)
	}()
}
