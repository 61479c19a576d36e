/**
 * What of a file of words is text: each string and template literal that is said, with the place it stands at. Code
 * around them, as conditions and calls, is left alone; of it only the way to a text is told.
 */
import { parseSync } from 'vite'

/**
 * @typedef {object} Leaf One text of a file.
 * @property {string} path Where it stands, as `cards.bench.lid`.
 * @property {string[]} way Conditions on the way to it inside its function, each with `+` or `-` behind it.
 * @property {string} text As a translator sees it: `{number} lid`; what is text itself, as `{1}`.
 * @property {{ name: string, source: string, start: number, end: number }[]} holes What is filled in, in order; `name`
 * is what stands in braces.
 * @property {string} comment What stands above it in the source, or ''.
 * @property {number} start Where the literal begins in the source.
 * @property {number} end Where it ends.
 * @property {number} line From 1.
 */

/**
 * All texts of a file, in their order.
 * @param {string} source TypeScript.
 * @returns {Leaf[]}
 * @throws {Error} where it cannot be parsed, or a text holds braces of its own.
 */
export function leavesOf(source) {
  const { program, comments, errors } = parseSync('words.ts', source, { lang: 'ts' })
  if (errors.length > 0) throw new Error(errors[0].message)
  /** @type {Leaf[]} */
  const leaves = []
  const ends = [...source.matchAll(/\n/g)].map(({ index }) => index)
  let lines = 0
  const code = (node) => source.slice(node.start, node.end).replace(/\s+/g, ' ')

  const commentAbove = (node) => {
    const above = comments.find(
      (it) => it.end <= node.start && /^\s*$/.test(source.slice(it.end, node.start)),
    )
    return above
      ? above.value
          .replace(/^\s*\*+ ?/gm, '')
          .replace(/\s+/g, ' ')
          .trim()
      : ''
  }

  const add = (node, { path, way, comment }, text) => {
    while (ends[lines] < node.start) lines++
    const leaf = { path, way, comment, text, holes: [], start: node.start, end: node.end, line: lines + 1 }
    leaves.push(leaf)
    return leaf
  }

  /** Visits what may be said; `at`: where it stands. */
  const visit = (node, at) => {
    switch (node?.type) {
      case 'ObjectExpression':
        for (const it of node.properties) {
          if (it.type !== 'Property') continue
          const key = it.key.name ?? String(it.key.value)
          visit(it.value, { ...at, path: `${at.path}.${key}`, comment: commentAbove(it) || at.comment })
        }
        return
      case 'ArrayExpression':
        for (const [i, it] of node.elements.entries())
          visit(it, at.inside ? further(at, `${i}`) : { ...at, path: `${at.path}.${i}` })
        return
      case 'SpreadElement':
        return visit(node.argument, at)
      case 'TSAsExpression':
      case 'TSSatisfiesExpression':
      case 'ParenthesizedExpression':
        return visit(node.expression, at)
      case 'ArrowFunctionExpression':
      case 'FunctionDeclaration':
      case 'FunctionExpression': {
        const inside = { ...at, inside: true }
        for (const it of node.params)
          if (it.type === 'AssignmentPattern') visit(it.right, further(inside, `${code(it.left)} =`))
        return visit(node.body, inside)
      }
      case 'BlockStatement':
        for (const it of node.body) visit(it, at)
        return
      case 'ReturnStatement':
        return visit(node.argument, at)
      case 'IfStatement':
        visit(node.consequent, further(at, `${code(node.test)}+`))
        return visit(node.alternate, further(at, `${code(node.test)}-`))
      case 'VariableDeclaration':
        for (const it of node.declarations) visit(it.init, further(at, `${code(it.id)} =`))
        return
      case 'ConditionalExpression':
        visit(node.consequent, further(at, `${code(node.test)}+`))
        return visit(node.alternate, further(at, `${code(node.test)}-`))
      case 'LogicalExpression':
        visit(node.left, at)
        return visit(node.right, further(at, `${code(node.left)} ${node.operator}`))
      case 'CallExpression': {
        if (node.callee.type === 'MemberExpression') {
          visit(node.callee.object, at)
          for (const it of node.arguments) if (it.type === 'ArrowFunctionExpression') visit(it, at)
          return
        }
        for (const [i, it] of node.arguments.entries()) visit(it, further(at, `${code(node.callee)} ${i}`))
        return
      }
      case 'Literal':
        if (typeof node.value === 'string') add(node, at, plain(node.value))
        return
      case 'TemplateLiteral': {
        const leaf = add(node, at, plain(node.quasis[0].value.cooked))
        let parts = 0
        for (const [i, it] of node.expressions.entries()) {
          const before = leaves.length
          visit(it, further(at, `{${parts + 1}}`))
          const name = leaves.length > before ? String(++parts) : nameOf(code(it))
          leaf.holes.push({ name, source: code(it), start: it.start, end: it.end })
          leaf.text += `{${name}}${plain(node.quasis[i + 1].value.cooked)}`
        }
        return
      }
    }
  }

  for (const it of program.body) {
    const node = it.type === 'ExportNamedDeclaration' ? it.declaration : it
    const root = { way: [], inside: false, comment: '' }
    if (node?.type === 'FunctionDeclaration') visit(node, { ...root, path: node.id.name })
    if (node?.type === 'VariableDeclaration')
      for (const one of node.declarations) visit(one.init, { ...root, path: one.id.name })
  }
  return leaves
}

const plain = (text) => {
  if (/[{}]/.test(text)) throw new Error(`braces stand for what is filled in: ${text}`)
  return text
}

const further = (at, step) => ({ ...at, way: [...at.way, step] })

/** What stands in braces for a hole: the last name of `f.number`, else the source. */
export const nameOf = (source) => /^(?:\w+\.)*(\w+)$/.exec(source)?.[1] ?? source
