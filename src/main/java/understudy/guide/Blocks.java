package understudy.guide;

import java.util.ArrayList;
import java.util.List;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableHead;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.BulletList;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;

/** Turns a page's nodes into plain blocks. The pages keep to what is known here; anything else is a defect of a page. */
final class Blocks {

    private Blocks() {}

    static List<Block> of(Node document) {
        List<Block> blocks = new ArrayList<>();
        for (Node node : children(document)) {
            if (node instanceof BulletList) {
                children(node).forEach(item -> blocks.add(new Block.Item("-", onlyParagraph(item))));
            } else if (node instanceof OrderedList list) {
                int number = list.getMarkerStartNumber();
                for (Node item : children(node)) {
                    blocks.add(new Block.Item(number++ + ".", onlyParagraph(item)));
                }
            } else {
                blocks.add(single(node));
            }
        }
        return blocks;
    }

    private static Block single(Node node) {
        if (node instanceof Heading heading) {
            return new Block.Heading(heading.getLevel(), PlainText.of(heading));
        } else if (node instanceof BlockQuote) {
            return new Block.Warning(onlyParagraph(node));
        } else if (node instanceof FencedCodeBlock code) {
            return new Block.Verbatim(code.getLiteral().lines().toList());
        } else if (node instanceof TableBlock) {
            return table(node);
        } else if (node instanceof Paragraph paragraph) {
            return Markdown.drawing(paragraph).<Block>map(Blocks::drawing).orElseGet(() -> new Block.Text(PlainText.of(paragraph)));
        }
        throw new IllegalStateException("a page holds a " + node.getClass().getSimpleName() + ", which is not shown as text");
    }

    private static Block drawing(Image image) {
        return new Block.Drawing(PlainText.of(image),
                Resource.text(image.getDestination().replace(".svg", ".txt")).lines().toList());
    }

    private static Block table(Node table) {
        List<String> header = List.of();
        List<List<String>> rows = new ArrayList<>();
        for (Node part : children(table)) {
            for (Node row : children(part)) {
                List<String> cells = children(row).stream().map(PlainText::of).toList();
                if (part instanceof TableHead) {
                    header = cells;
                } else {
                    rows.add(cells);
                }
            }
        }
        return new Block.Rows(header, rows);
    }

    private static String onlyParagraph(Node node) {
        if (node.getFirstChild() instanceof Paragraph paragraph && paragraph.getNext() == null) {
            return PlainText.of(paragraph);
        }
        throw new IllegalStateException("a page holds a list or a warning of more than one paragraph");
    }

    private static List<Node> children(Node parent) {
        List<Node> children = new ArrayList<>();
        for (Node child = parent.getFirstChild(); child != null; child = child.getNext()) {
            children.add(child);
        }
        return children;
    }
}
