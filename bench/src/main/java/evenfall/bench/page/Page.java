package evenfall.bench.page;

import static j2html.TagCreator.body;
import static j2html.TagCreator.div;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.head;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.style;
import static j2html.TagCreator.title;

import j2html.TagCreator;
import j2html.tags.DomContent;
import j2html.tags.specialized.SectionTag;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** One HTML page that needs nothing from anywhere: styles and charts lie in it. Reads on a screen, prints on A4 and Letter. */
public final class Page {
    private final String title;
    private final List<DomContent> parts = new ArrayList<>();

    /**
     * @param title of the page, also its first heading
     * @param subtitles small lines below it
     */
    public Page(String title, List<String> subtitles) {
        this.title = title;
        parts.add(h1(title));
        for (String line : subtitles) {
            parts.add(p(line).withClass("sub"));
        }
    }

    /** The answer, in large letters. */
    public Page lead(String words) {
        parts.add(p(words).withClass("lead"));
        return this;
    }

    /** Content without a heading of its own. */
    public Page with(DomContent... content) {
        parts.addAll(List.of(content));
        return this;
    }

    /** A part with a heading. */
    public Page section(String heading, DomContent... content) {
        SectionTag section = TagCreator.section(h2(heading));
        for (DomContent part : content) {
            section.with(part);
        }
        parts.add(section);
        return this;
    }

    /** A boxed caution. */
    public Page caution(String words) {
        parts.add(div(p(words)).withClass("caution"));
        return this;
    }

    /** A small grey paragraph. */
    public static DomContent note(String words) {
        return p(words).withClass("note");
    }

    /** Something broad that may scroll sideways on a small screen. */
    public static DomContent wide(DomContent content) {
        return div(content).withClass("wide");
    }

    /** Parts that stay together on one sheet. */
    public static DomContent block(DomContent... content) {
        return div(content).withClass("block");
    }

    /** Parts side by side where there is room. */
    public static DomContent columns(DomContent... content) {
        return div(content).withClass("columns");
    }

    /** What stands on the page, for one that brings the styles itself ({@link #css}). */
    public String content() {
        StringBuilder out = new StringBuilder();
        for (DomContent part : parts) {
            out.append(part.render());
        }
        return out.toString();
    }

    /** The whole file. */
    public String html() {
        return "<!DOCTYPE html>\n"
                + TagCreator.html(
                                head(
                                        meta().withCharset("utf-8"),
                                        meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
                                        title(title),
                                        style(rawHtml(css()))),
                                body().with(parts))
                        .withLang("en")
                        .render()
                + "\n";
    }

    /** The styles of every page. */
    public static String css() {
        try (InputStream in = Page.class.getResourceAsStream("page.css")) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file page.css");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
