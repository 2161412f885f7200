" :make lints the file and fills the quickfix list.

if exists('current_compiler')
  finish
endif
let current_compiler = 'fairlead'

CompilerSet makeprg=fairlead\ lint\ --format\ brief\ %:S
" Columns count characters, as they do on the screen.
CompilerSet errorformat=%E%f:%l:%v:\ error:\ %m,%W%f:%l:%v:\ warning:\ %m,%I%f:%l:%v:\ advice:\ %m,%-G%.%#
