" What Vim needs to know of haul rigs in Fairlead's notation.

if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1
let s:cpo = &cpo
set cpo&vim

setlocal commentstring=#\ %s comments=:# formatoptions-=t formatoptions+=croql
setlocal iskeyword+=- expandtab suffixesadd=.rig
setlocal include=^\\s*use\\s\\+\"
if !exists('current_compiler')
  compiler fairlead
endif

augroup fairlead_save
  autocmd! * <buffer>
  autocmd BufWritePre <buffer> call fairlead#format_on_save()
augroup END

let b:undo_ftplugin = 'setlocal commentstring< comments< formatoptions< iskeyword< expandtab< suffixesadd<'
      \ . ' include< makeprg< errorformat< | execute "autocmd! fairlead_save * <buffer>"'

let &cpo = s:cpo
unlet s:cpo
