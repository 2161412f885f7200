" Rig blocks in Markdown are set in the standard style on save; nothing else is touched.

augroup fairlead_save
  autocmd! * <buffer>
  autocmd BufWritePre <buffer> call fairlead#format_on_save()
augroup END

let b:undo_ftplugin = get(b:, 'undo_ftplugin', 'execute') . ' | execute "autocmd! fairlead_save * <buffer>"'
