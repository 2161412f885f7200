-- Gives a Neovim before 0.8 what later ones have, so that the set-up takes that way.
if vim.lsp.start then
  return
end
local by_name = {}
vim.lsp.start = function(config, options)
  assert(config.name and config.root_dir and options.bufnr, 'vim.lsp.start is not called as it wants')
  local key = config.name .. config.root_dir
  by_name[key] = by_name[key] or vim.lsp.start_client(config)
  vim.lsp.buf_attach_client(options.bufnr, by_name[key])
  return by_name[key]
end
