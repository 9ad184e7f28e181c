// SPDX-License-Identifier: MIT
// Runs in a page that shows a report in a frame, and measures there what only a browser knows: whether it scrolls
// sideways, how far each text stands out from what lies behind it, how large it is, and whether labels collide.

// Relative luminance and contrast as WCAG 2.1 defines them (from memory).
function luminance([r, g, b]) {
    const linear = (c) => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
}

function contrast(a, b) {
    const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
}

// "rgb(1, 2, 3)" or "rgba(1, 2, 3, 0.5)" as four numbers; null for what is no plain colour.
function colour(text) {
    const match = /^rgba?\(([^)]*)\)$/.exec(text);
    if (!match) return null;
    const parts = match[1].split(/[ ,/]+/).map(Number);
    return [parts[0], parts[1], parts[2], parts.length > 3 ? parts[3] : 1];
}

function over(top, below) {
    return [0, 1, 2].map((i) => top[i] * top[3] + below[i] * (1 - top[3]));
}

function opacity(element) {
    let result = 1;
    for (let at = element; at; at = at.parentElement) result *= Number(getComputedStyle(at).opacity);
    return result;
}

// The colour behind an HTML element; a text where it cannot be told.
function behind(element) {
    const layers = [];
    for (let at = element; at; at = at.parentElement) {
        const style = getComputedStyle(at);
        if (style.backgroundImage !== 'none') return 'a picture';
        const paint = colour(style.backgroundColor);
        if (!paint) return style.backgroundColor;
        if (paint[3] > 0) layers.push(paint);
        if (paint[3] === 1) break;
    }
    return layers.reverse().reduce((below, paint) => over(paint, below), [255, 255, 255]);
}

// The colour behind a point of an SVG text: what was painted there before it.
function behindInPicture(text, point) {
    const svg = text.ownerSVGElement;
    let below = behind(svg.parentElement);
    if (typeof below === 'string') return below;
    for (const shape of svg.querySelectorAll('rect, circle, ellipse, path, polygon')) {
        if (!(shape.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_FOLLOWING)) break;
        if (shape.closest('defs, pattern, marker, clipPath')) continue;
        const matrix = shape.getScreenCTM();
        if (!matrix || !shape.isPointInFill(point.matrixTransform(matrix.inverse()))) continue;
        const style = getComputedStyle(shape);
        if (style.fill === 'none') continue;
        const paint = colour(style.fill);
        if (!paint) {
            below = 'a pattern';
            continue;
        }
        paint[3] *= Number(style.fillOpacity) * opacity(shape);
        if (typeof below === 'string') {
            if (paint[3] === 1) below = paint.slice(0, 3);
        } else {
            below = over(paint, below);
        }
    }
    return below;
}

function pictureText(text, faults, words) {
    const style = getComputedStyle(text);
    const box = text.getBBox();
    const matrix = text.getScreenCTM();
    const paint = colour(style.fill);
    const halo = style.stroke !== 'none' && style.paintOrder.startsWith('stroke') ? colour(style.stroke) : null;
    let worst = Infinity;
    for (const share of [0.02, 0.5, 0.98]) {
        const point = new DOMPoint(box.x + box.width * share, box.y + box.height / 2).matrixTransform(matrix);
        const below = halo || behindInPicture(text, point);
        if (typeof below === 'string' || !paint) {
            faults.push(`contrast: "${words}" stands on ${below}`);
            return {ratio: Infinity, size: Infinity};
        }
        worst = Math.min(worst, contrast(over([...paint.slice(0, 3), paint[3] * opacity(text)], below), below));
    }
    return {ratio: worst, size: parseFloat(style.fontSize) * Math.abs(matrix.d)};
}

function pageText(element, faults, words) {
    const style = getComputedStyle(element);
    const below = behind(element);
    const paint = colour(style.color);
    if (typeof below === 'string' || !paint) {
        faults.push(`contrast: "${words}" stands on ${below}`);
        return {ratio: Infinity, size: Infinity};
    }
    const seen = over([...paint.slice(0, 3), paint[3] * opacity(element)], below);
    return {ratio: contrast(seen, below), size: parseFloat(style.fontSize)};
}

function textFaults(page, faults) {
    const walker = page.createTreeWalker(page.body, NodeFilter.SHOW_TEXT);
    let lowest = Infinity, smallest = Infinity, count = 0;
    while (walker.nextNode()) {
        const words = walker.currentNode.data.trim().slice(0, 60);
        const element = walker.currentNode.parentElement;
        if (!words || element.closest('style, script, svg title, svg desc') || !element.checkVisibility()) continue;
        const label = element.closest('svg text');
        const {ratio, size} = label ? pictureText(label, faults, words) : pageText(element, faults, words);
        if (ratio < 4.5) faults.push(`contrast: "${words}" has ${ratio.toFixed(2)}:1`);
        if (size < 8) faults.push(`size: "${words}" is ${size.toFixed(1)} px high`);
        lowest = Math.min(lowest, ratio);
        smallest = Math.min(smallest, size);
        ++count;
    }
    return {lowest, smallest, count};
}

// Labels of one picture that lie on each other or outside it.
function labelFaults(page, faults) {
    for (const svg of page.querySelectorAll('svg')) {
        if (!svg.checkVisibility()) continue;
        const frame = svg.getBoundingClientRect();
        const boxes = [...svg.querySelectorAll('text')].map((text) => [text.textContent.trim(), text.getBoundingClientRect()])
            .filter(([words]) => words);
        boxes.forEach(([words, box], i) => {
            if (box.left < frame.left - 1 || box.right > frame.right + 1 || box.top < frame.top - 1 || box.bottom > frame.bottom + 1)
                faults.push(`picture: "${words}" lies partly outside`);
            for (const [others, other] of boxes.slice(i + 1)) {
                const wide = Math.min(box.right, other.right) - Math.max(box.left, other.left);
                const high = Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top);
                // Boxes hold the room above and below the letters too.
                if (wide > 1.5 && high > 0.35 * Math.min(box.height, other.height))
                    faults.push(`picture: "${words}" and "${others}" lie on each other`);
            }
        });
    }
}

function widthFaults(page, faults, when) {
    const root = page.documentElement;
    if (root.scrollWidth <= root.clientWidth) return;
    faults.push(`width: ${when}, the page is ${root.scrollWidth} px wide in a window of ${root.clientWidth} px`);
    // Something absolutely placed is held back only by a box that is placed itself.
    const wide = [...page.body.querySelectorAll('*')].filter((one) => {
        if (one.getBoundingClientRect().right <= root.clientWidth + 1) return false;
        const free = getComputedStyle(one).position === 'absolute';
        for (let at = free ? one.offsetParent : one.parentElement; at && at !== page.body; at = at.parentElement)
            if (getComputedStyle(at).overflowX !== 'visible') return false;
        return true;
    });
    for (const one of wide.slice(-3))
        faults.push(`width: <${one.localName} class="${one.className}"> "${one.textContent.trim().slice(0, 20)}" sticks out`);
}

async function measure(address, width) {
    const frame = document.createElement('iframe');
    frame.style.cssText = `width: ${width}px; height: 844px; border: 0`;
    const loaded = new Promise((done) => { frame.onload = done; });
    frame.src = address;
    document.body.append(frame);
    await loaded;
    const page = frame.contentDocument, faults = [];
    widthFaults(page, faults, 'folded');
    for (const details of page.querySelectorAll('details')) details.open = true;
    widthFaults(page, faults, 'unfolded');
    const texts = textFaults(page, faults);
    labelFaults(page, faults);
    const height = page.documentElement.scrollHeight;
    frame.remove();
    return {faults, height, ...texts};
}

export async function measureAll(pages, widths) {
    const results = {};
    for (const page of pages) {
        results[page] = {};
        for (const width of widths) {
            try {
                results[page][width] = await measure(`/pages/${page}`, width);
            } catch (error) {
                results[page][width] = {faults: [`the page could not be measured: ${error.stack}`]};
            }
        }
    }
    await fetch('/results', {method: 'POST', body: JSON.stringify(results)});
}
