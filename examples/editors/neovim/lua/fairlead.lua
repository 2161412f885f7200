-- Fairlead's language server in Neovim. Colours, indentation and the standard style on
-- save are those of the folder vim beside this one.

local M = {}

-- What can be set: the program; whether Markdown with rig blocks is served too; what the
-- server shows beside the text, where this Neovim can show it.
M.options = {
  program = 'fairlead',
  notes = true,
  hints = { tension = true, advantage = true },
  lens = true,
}

-- The folder that a file belongs to: the nearest above with house rules or a repository.
local function root_of(path)
  local folder = vim.fn.fnamemodify(path, ':p:h')
  local up = vim.fn.escape(folder, ' ,;') .. ';'
  local rules = vim.fn.findfile('policy.rig', up)
  if rules ~= '' then
    return vim.fn.fnamemodify(rules, ':p:h')
  end
  local repository = vim.fn.finddir('.git', up)
  if repository ~= '' then
    return vim.fn.fnamemodify(repository, ':p:h:h')
  end
  return folder
end

local function has_rig(buffer)
  for _, line in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
    if line:match('^[%s>]*[-*+%d.)]*%s*```+%s*rig%s*$') or line:match('^[%s>]*[-*+%d.)]*%s*~~~+%s*rig%s*$') then
      return true
    end
  end
  return false
end

local function attached(client, buffer)
  if M.options.lens and client.server_capabilities.codeLensProvider and vim.lsp.codelens then
    vim.api.nvim_create_autocmd({ 'BufEnter', 'InsertLeave', 'BufWritePost' }, {
      buffer = buffer,
      callback = function() vim.lsp.codelens.refresh({ bufnr = buffer }) end,
    })
  end
  if vim.lsp.inlay_hint and type(vim.lsp.inlay_hint) == 'table' then -- since 0.10
    vim.lsp.inlay_hint.enable(true, { bufnr = buffer })
  end
end

-- Neovim before 0.8 does not find a running server by itself.
local running = {}

local function start_by_hand(config, buffer)
  local id = running[config.root_dir]
  if not id or not vim.lsp.get_client_by_id(id) then
    id = vim.lsp.start_client(config)
    running[config.root_dir] = id
  end
  if id then
    vim.lsp.buf_attach_client(buffer, id)
  end
end

-- Starts the server for a buffer, or attaches the one that serves its folder.
function M.serve(buffer)
  local path = vim.api.nvim_buf_get_name(buffer)
  if path == '' or vim.bo[buffer].buftype ~= '' then
    return
  end
  if vim.bo[buffer].filetype ~= 'rig' and not (M.options.notes and has_rig(buffer)) then
    return
  end
  if vim.fn.executable(M.options.program) == 0 then
    vim.notify_once('Fairlead: ' .. M.options.program .. ' cannot be run; install it, or name it in setup', vim.log.levels.WARN)
    return
  end
  local shown = { hints = M.options.hints, lens = M.options.lens }
  local config = {
    name = 'fairlead',
    cmd = { M.options.program, 'serve' },
    root_dir = root_of(path),
    init_options = shown,
    settings = { fairlead = shown },
    on_attach = attached,
  }
  if vim.lsp.start then
    vim.lsp.start(config, { bufnr = buffer })
  else
    start_by_hand(config, buffer)
  end
end

function M.setup(options)
  M.options = vim.tbl_deep_extend('force', M.options, options or {})
  if M.options.program ~= 'fairlead' then
    vim.g.fairlead_program = M.options.program
  end
  local group = vim.api.nvim_create_augroup('fairlead', { clear = true })
  vim.api.nvim_create_autocmd('FileType', {
    group = group,
    pattern = { 'rig', 'markdown' },
    callback = function(event) M.serve(event.buf) end,
  })
  -- A document may get its first rig later.
  vim.api.nvim_create_autocmd('BufWritePost', {
    group = group,
    pattern = { '*.md', '*.markdown' },
    callback = function(event) M.serve(event.buf) end,
  })
end

return M
