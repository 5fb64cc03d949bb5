-- Does in Neovim what a builder does, and writes down what was seen: squiggles, a hover, the first fix, renaming.
local seen = {}

local function wait(what, check)
  if not vim.wait(30000, check, 20) then error('never came: ' .. what) end
end
local function codes()
  return vim.tbl_map(function(found) return found.code end, vim.diagnostic.get(0))
end
local function ask(method, params)
  for _, answer in pairs(vim.lsp.buf_request_sync(0, method, params, 30000) or {}) do
    if answer.error then error(vim.inspect(answer.error)) end
    return answer.result
  end
end

local function work()
  wait('squiggles', function() return #vim.diagnostic.get(0) > 0 end)
  seen.before = codes()
  local first = vim.diagnostic.get(0)[1]
  vim.api.nvim_win_set_cursor(0, { first.lnum + 1, first.col })
  seen.hover = ask('textDocument/hover', vim.lsp.util.make_position_params()).contents.value
  local range = vim.lsp.util.make_range_params()
  range.context = { diagnostics = {} }
  vim.lsp.util.apply_workspace_edit(ask('textDocument/codeAction', range)[1].edit, 'utf-16')
  wait('an end to the squiggles', function() return not vim.tbl_contains(codes(), seen.before[1]) end)
  seen.after = codes()
  local place = vim.fn.search('dry cylinder')
  vim.api.nvim_win_set_cursor(0, { place, vim.fn.col('.') - 1 })
  vim.lsp.buf.rename('pressure hull')
  wait('the new name', function() return vim.fn.search('dry cylinder', 'nw') == 0 end)
  seen.text = table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, true), '\n')
end

local isDone, problem = pcall(work)
if not isDone then seen.problem = tostring(problem) end
vim.fn.writefile({ vim.fn.json_encode(seen) }, 'seen.json')
vim.cmd('qa!')
