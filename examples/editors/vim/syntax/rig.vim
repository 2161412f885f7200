" Highlighting of haul rigs in Fairlead's notation.

if exists('b:current_syntax')
  finish
endif
let s:cpo = &cpo
set cpo&vim

" A word is made of letters, digits, - and _; a name of words with points between.
let s:before = '\%(\k\|[-.]\)\@4<!'
let s:after = '\%(\k\|[-.]\)\@!'
" In Markdown a quote puts its marks before the lines of a block.
let s:begin = '\%(^[ \t>]*\)\@<='
let s:figure = '\s\+-\=\d'

function! s:any(words) abort
  return '\%(' . join(a:words, '\|') . '\)' . s:after
endfunction

function! s:match(group, pattern, ...) abort
  execute 'syn match' a:group '+' . a:pattern . '+' join(a:000)
endfunction

" Any of some words, wherever it stands; where it begins a statement; where it follows
" the word that does.
function! s:word(group, words, ...) abort
  call call('s:match', [a:group, s:before . s:any(a:words)] + a:000)
endfunction

function! s:begins(group, words, ...) abort
  call call('s:match', [a:group, s:begin . s:any(a:words)] + a:000)
endfunction

function! s:second(group, first, pattern) abort
  call s:match(a:group, '\%(^[ \t>]*' . a:first . '\s\+\)\@<=' . a:pattern, 'contained')
endfunction

" A statement that has words of its own goes to the end of its line.
function! s:line(first, contains) abort
  execute 'syn region rigLine matchgroup=rigStatement keepend oneline start=+' . s:begin
        \ . s:any([a:first]) . '+ end=+$+ contains=@rigText,' . a:contains
endfunction

let s:any_name = '\d\@!\k\%(\k\|[-.]\)*'
let s:name = '\%(' . s:any(fairlead#words#reserved) . '\)\@!' . s:any_name . s:after
let s:plain = filter(copy(fairlead#words#clauses), 'index(fairlead#words#naming + fairlead#words#free, v:val) < 0')

syn cluster rigText contains=rigComment,rigString,rigUnclosed,rigNumber,rigPercent,rigStroke,rigColon,rigStrange

" Names. Used ones have no colour; a match of their own keeps their words apart.
call s:match('rigUsed', s:any_name, 'contained')
call s:match('rigUsedClause', s:name, 'contained')
call s:match('rigDeclared', s:name, 'contained nextgroup=rigModel skipwhite')
call s:match('rigModel', s:name . '\%(' . s:figure . '\)\@!', 'contained')
call s:match('rigWord', s:name, 'contained')
call s:match('rigRule', s:any_name, 'contained')
call s:match('rigTitle', s:any_name, 'contained')

" Clauses, of parts, models, nodes and changes.
call s:word('rigStructure', fairlead#words#structure)
call s:word('rigStructure', ['on', 'with', 'without'], 'nextgroup=rigUsedClause skipwhite')
call s:word('rigClause', s:plain)
call s:match('rigClause', s:before . s:any(fairlead#words#naming) . '\%(' . s:figure . '\)\@!',
      \ 'nextgroup=rigUsedClause skipwhite')
call s:word('rigClause', fairlead#words#free, 'nextgroup=rigWord skipwhite')
syn region rigNode matchgroup=rigDelimiter start=+(+ end=+)+ end=+$+ keepend
      \ contains=@rigText,rigStructure,rigClause,rigWord

" Claims, acceptances and house rules.
call s:word('rigClaim', fairlead#words#claims, 'contained')
call s:word('rigClaim', ['of', 'by'], 'contained nextgroup=rigUsed skipwhite')
call s:word('rigClaim', ['finding'], 'contained nextgroup=rigRule skipwhite')
call s:word('rigClaim', ['class'], 'contained nextgroup=rigChoice skipwhite')
call s:word('rigClaim', ['for'], 'contained nextgroup=rigKindOf skipwhite')
call s:word('rigPlace', ['at', 'on', 'without'], 'contained nextgroup=rigUsed skipwhite')
call s:match('rigChoice', s:any(fairlead#words#classes), 'contained')
call s:match('rigKindOf', s:any(fairlead#words#kinds), 'contained')
call s:word('rigFigure', fairlead#words#figures, 'contained')
call s:second('rigRuleSet', 'rule', s:any_name)
call s:second('rigChoiceSet', 'rule\s\+' . s:any_name, s:any(fairlead#words#settings))
call s:second('rigAccepted', 'accept', s:any_name)
call s:word('rigUnitWord', fairlead#words#units, 'contained')
call s:line('expect', 'rigClaim,rigStructure,rigPlace')
call s:line('accept', 'rigStructure,rigPlace,rigAccepted')
call s:line('require', 'rigClaim,rigStructure,rigFigure')
call s:line('rule', 'rigRuleSet,rigChoiceSet')
call s:line('units', 'rigUnitWord')

" What begins a statement.
call s:begins('rigKind', fairlead#words#kinds, 'nextgroup=rigDeclared skipwhite')
let s:others = filter(copy(fairlead#words#statements), "index(['expect', 'accept', 'require', 'rule', 'units'], v:val) < 0")
call s:begins('rigStatement', s:others)
call s:begins('rigStatement', ['rig', 'policy'], 'nextgroup=rigTitle skipwhite')
call s:begins('rigStatement', ['reeve'], 'nextgroup=rigUsedClause skipwhite')
call s:begins('rigStatement', ['stock'], 'nextgroup=rigStockKind skipwhite')
call s:match('rigStockKind', s:any(fairlead#words#kinds), 'contained nextgroup=rigModel skipwhite')
call s:begins('rigStatement', ['include'], 'nextgroup=rigIncluded skipwhite')
call s:match('rigIncluded', s:any_name, 'contained nextgroup=rigIncludeAs skipwhite')
call s:match('rigIncludeAs', s:any(['as']), 'contained nextgroup=rigTitle skipwhite')
call s:begins('rigStatement', ['join'], 'nextgroup=rigJoined skipwhite')
call s:match('rigJoined', s:any_name, 'contained nextgroup=rigJoinTo skipwhite')
call s:match('rigJoinTo', s:any(['to']), 'contained nextgroup=rigUsed skipwhite')

" Numbers, texts, strokes.
call s:match('rigNumber', s:before . '-\=\d\+\%(\.\d\+\)\=', 'nextgroup=rigUnit skipwhite')
call s:match('rigUnit', s:any(fairlead#words#units), 'contained')
syn match rigPercent +%+
syn match rigStroke +[/\\~]+
syn match rigColon +[:,]+
syn match rigStrange +[][{}=;!*<|&^$?@`']+
syn match rigStrange +\k\@![^ -~[:cntrl:]]+
syn match rigUnclosed +".*$+
syn region rigString start=+"\%(\%([^"\\]\|\\.\)*"\)\@=+ skip=+\\.+ end=+"+ oneline contains=rigEscape,@Spell
syn match rigEscape +\\["\\]+ contained
syn match rigComment +#.*$+ contains=@Spell

syn sync minlines=1

hi def link rigStatement Statement
hi def link rigKind Type
hi def link rigKindOf rigKind
hi def link rigStockKind rigKind
hi def link rigClause Identifier
hi def link rigFigure rigClause
hi def link rigStructure Keyword
hi def link rigPlace rigStructure
hi def link rigIncludeAs rigStructure
hi def link rigJoinTo rigStructure
hi def link rigClaim Keyword
hi def link rigChoice Constant
hi def link rigChoiceSet rigChoice
hi def link rigNumber Number
hi def link rigUnit Special
hi def link rigUnitWord rigUnit
hi def link rigPercent rigUnit
hi def link rigString String
hi def link rigEscape SpecialChar
hi def link rigUnclosed Error
hi def link rigStrange Error
hi def link rigStroke Operator
hi def link rigDelimiter Delimiter
hi def link rigColon rigDelimiter
hi def link rigComment Comment
hi def link rigTitle Title
hi def link rigIncluded rigTitle
hi def link rigDeclared Function
hi def link rigModel PreProc
hi def link rigRule Label
hi def link rigRuleSet rigRule
hi def link rigAccepted rigRule
hi def link rigWord Constant

delfunction s:any
delfunction s:match
delfunction s:word
delfunction s:begins
delfunction s:second
delfunction s:line

let &cpo = s:cpo
unlet s:cpo
let b:current_syntax = 'rig'
