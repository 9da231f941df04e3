package offtape.report.render;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Reads markup back with the XML parser of the JDK. */
final class Svg {

    private static final Pattern SVG = Pattern.compile("<svg .*?</svg>", Pattern.DOTALL);

    private Svg() {}

    /** The document, or an exception if it is not well-formed. */
    static Document parse(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }

    /** The drawings of a page. */
    static List<String> drawings(String page) {
        List<String> found = new ArrayList<>();
        Matcher matcher = SVG.matcher(page);
        while (matcher.find()) {
            found.add(matcher.group());
        }
        return found;
    }

    /** All elements of that name. */
    static List<Element> elements(Document document, String tag) {
        NodeList nodes = document.getElementsByTagName(tag);
        List<Element> found = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            found.add((Element) nodes.item(i));
        }
        return found;
    }
}
