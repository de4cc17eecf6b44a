package evenfall.bench.page;

import evenfall.quantity.FixedDecimals;
import j2html.tags.ContainerTag;

/** An element of SVG; the HTML library knows none of its own. Text and attributes are escaped by the library. */
final class SvgTag extends ContainerTag<SvgTag> {
    private static final int DECIMALS = 1;

    SvgTag(String name) {
        super(name);
    }

    /** A coordinate or length; a tenth of a pixel is finer than the eye. */
    SvgTag at(String name, double value) {
        return attr(name, number(value));
    }

    static String number(double value) {
        return FixedDecimals.text(value, DECIMALS);
    }

    static SvgTag text(double x, double y, String cssClass, String words) {
        return new SvgTag("text").at("x", x).at("y", y).withClass(cssClass).withText(words);
    }
}
