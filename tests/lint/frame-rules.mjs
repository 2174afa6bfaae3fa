/** Our own lint rule: what runs in every frame makes no garbage and starts no rendering of React. */

const SETTER = /^set[A-Z]/

const isUseFrame = (node) => node.type === 'CallExpression' && node.callee.name === 'useFrame'

const noGarbageInFrame = {
  create(context) {
    let depth = 0
    const report = (node, what) => {
      if (depth > 0)
        context.report({ node, message: `${what} inside useFrame: keep it and write into it instead` })
    }
    return {
      CallExpression(node) {
        if (isUseFrame(node)) depth += 1
        const { callee } = node
        if (callee.type === 'MemberExpression' && callee.property.name === 'clone') report(node, '.clone()')
        if (callee.type === 'Identifier' && SETTER.test(callee.name)) report(node, `${callee.name}()`)
      },
      'CallExpression:exit'(node) {
        if (isUseFrame(node)) depth -= 1
      },
      NewExpression: (node) => report(node, 'new'),
      ArrayExpression: (node) => report(node, 'an array'),
      ObjectExpression: (node) => report(node, 'an object'),
    }
  },
}

export default { meta: { name: 'counterturn' }, rules: { 'no-garbage-in-frame': noGarbageInFrame } }
