"""What stands on the screen of a window, as text."""

TEXT_IN_VIEW = """() => {
    const seen = [], walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    while (walker.nextNode()) {
        const text = walker.currentNode, range = document.createRange()
        range.selectNode(text)
        const box = range.getBoundingClientRect()
        const shown = text.parentElement.checkVisibility({visibilityProperty: true, opacityProperty: true})
            && !text.parentElement.closest('[data-testid=stIconMaterial]')
        if (shown && box.width > 1 && box.top < innerHeight && box.bottom > 0) seen.push(text.textContent)
    }
    return seen
}"""
"""Every piece of text that stands on the screen, the words of the doors among it; for `Page.evaluate`."""
