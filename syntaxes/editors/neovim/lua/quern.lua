-- Recipes kept as text: the language server for Neovim, and its commands. Colours come from ../vim, which goes on the runtime path beside this.
--
--   vim.opt.runtimepath:append('/path/to/quern/syntaxes/editors/vim')
--   vim.opt.runtimepath:append('/path/to/quern/syntaxes/editors/neovim')
--   require('quern').setup({ cmd = { 'quern', 'lsp', '--stdio' } })
local M = {}

local options = { cmd = { 'quern', 'lsp', '--stdio' } }

local function root_of(buffer)
  local from = vim.fn.fnamemodify(vim.api.nvim_buf_get_name(buffer), ':p:h')
  local here = from
  while true do
    for _, mark in ipairs({ 'quern.json', '.git' }) do
      if vim.fn.filereadable(here .. '/' .. mark) == 1 or vim.fn.isdirectory(here .. '/' .. mark) == 1 then
        return here
      end
    end
    local above = vim.fn.fnamemodify(here, ':h')
    if above == here then
      return from
    end
    here = above
  end
end

local clients = {}

--- Starts the server for a buffer, or gives it the one of its folder.
function M.start(buffer)
  local config = { name = 'quern', cmd = options.cmd, root_dir = root_of(buffer) }
  if vim.lsp.start then
    vim.lsp.start(config, { bufnr = buffer })
    return
  end
  -- Neovim 0.7
  local id = clients[config.root_dir]
  if not id or not vim.lsp.get_client_by_id(id) then
    id = vim.lsp.start_client(config)
    clients[config.root_dir] = id
  end
  vim.lsp.buf_attach_client(buffer, id)
end

--- Asks the server for a command of its own, such as `scale`; what it changes is written into the buffer.
function M.run(verb, given)
  local arguments = vim.tbl_extend('force', { uri = vim.uri_from_bufnr(0) }, given or {})
  vim.lsp.buf_request(0, 'workspace/executeCommand', { command = 'quern.' .. verb, arguments = { arguments } }, function(failed, answer)
    if failed then
      vim.notify(failed.message, vim.log.levels.ERROR)
    elseif answer and answer.ok == false then
      vim.notify(answer.why, vim.log.levels.WARN)
    elseif answer and answer.text then
      vim.notify(answer.text)
    else
      for _, words in ipairs(answer and answer.said or {}) do
        vim.notify(words)
      end
    end
  end)
end

function M.setup(given)
  options = vim.tbl_extend('force', options, given or {})
  local group = vim.api.nvim_create_augroup('quern', {})
  vim.api.nvim_create_autocmd('FileType', {
    group = group,
    pattern = 'quern',
    callback = function(at)
      M.start(at.buf)
      vim.api.nvim_buf_create_user_command(at.buf, 'QuernScale', function(said)
        M.run('scale', { to = said.args })
      end, { nargs = 1, desc = 'The recipe at another size: 12 slices, 1.5' })
      vim.api.nvim_buf_create_user_command(at.buf, 'QuernConvert', function(said)
        M.run('convert', { to = said.args })
      end, { nargs = 1, desc = 'The amounts in other measures: weight, us, metric, percent' })
      vim.api.nvim_buf_create_user_command(at.buf, 'QuernTrial', function()
        M.run('trial')
      end, { desc = 'A trial of today, begun' })
    end,
  })
end

return M
