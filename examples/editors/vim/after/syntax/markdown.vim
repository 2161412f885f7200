" Rigs in fenced blocks of Markdown: ```rig, in lists and quotes too.

let s:cpo = &cpo
set cpo&vim

let s:outer = get(b:, 'current_syntax', '')
unlet! b:current_syntax
syn include @rigNotes syntax/rig.vim
if s:outer !=# ''
  let b:current_syntax = s:outer
endif
unlet s:outer

syn region rigNotes matchgroup=markdownCodeDelimiter keepend contains=@rigNotes
      \ start=+^[ \t>]*\%([-*+]\s\+\|\d\+[.)]\s\+\)\=\z(`\{3,}\|\~\{3,}\)\s*rig\%(\s[^`]*\)\=$+
      \ end=+^[ \t>]*\z1[`~]*\s*$+

let &cpo = s:cpo
unlet s:cpo
