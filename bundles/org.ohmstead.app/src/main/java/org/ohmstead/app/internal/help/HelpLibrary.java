// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;

/** All of the help, read once: the contents, the pages, and the search over them. */
final class HelpLibrary {
    private static final Messages TEXTS = Messages.of(HelpLibrary.class);
    private static final int EXCERPT_BEFORE = 40;
    private static final int EXCERPT_AFTER = 110;

    private final List<HelpTopic> contents;
    private final Map<String, HelpPage> pages;

    private HelpLibrary(List<HelpTopic> contents, Map<String, HelpPage> pages) {
        this.contents = List.copyOf(contents);
        this.pages = pages;
    }

    /**
     * A page that a search found.
     *
     * @param page the page
     * @param excerpt the text around the first place that was found
     * @param weight how well it fits; more is better
     */
    record Hit(HelpPage page, String excerpt, double weight) {}

    /**
     * Reads all pages of the contents. A page that cannot be read says so itself and does not hide the others. Takes a
     * while: not for the user interface's thread.
     */
    static HelpLibrary read(HelpSource source) {
        Map<String, HelpPage> pages = new LinkedHashMap<>();
        List<HelpTopic> contents = source.contents();
        addAll(source, contents, pages);
        return new HelpLibrary(contents, pages);
    }

    private static void addAll(HelpSource source, List<HelpTopic> topics, Map<String, HelpPage> pages) {
        for (HelpTopic topic : topics) {
            if (!topic.href().isEmpty()) {
                pages.computeIfAbsent(plain(topic.href()), href -> readOrTell(source, topic.title(), href));
            }
            addAll(source, topic.topics(), pages);
        }
    }

    private static HelpPage readOrTell(HelpSource source, String title, String href) {
        try (InputStream content = source.open(href)) {
            return HelpPageParser.parse(href, content);
        } catch (IOException | HelpException e) {
            return new HelpPage(
                    href,
                    title,
                    List.of(
                            HelpBlock.Text.of(HelpBlock.Kind.TITLE, HelpSpan.plain(title)),
                            HelpBlock.Text.of(HelpBlock.Kind.PARAGRAPH, HelpSpan.plain(TEXTS.text("page.unshown"))),
                            HelpBlock.Text.of(HelpBlock.Kind.PARAGRAPH, HelpSpan.plain(e.getMessage()))));
        }
    }

    /** Returns the contents. */
    List<HelpTopic> contents() {
        return contents;
    }

    /** Returns all pages in the order of the contents. */
    List<HelpPage> pages() {
        return List.copyOf(pages.values());
    }

    /** Returns a page by its address, with or without a fragment. */
    Optional<HelpPage> page(String href) {
        return Optional.ofNullable(pages.get(plain(href)));
    }

    /** Returns the pages that hold a beginning of a word for each word of the query, the best first. */
    List<Hit> search(String query) {
        List<Pattern> words = patterns(query);
        List<Hit> hits = new ArrayList<>();
        if (!words.isEmpty()) {
            for (HelpPage page : pages.values()) {
                hit(page, words).ifPresent(hits::add);
            }
        }
        hits.sort(Comparator.comparingDouble(Hit::weight).reversed());
        return hits;
    }

    /** Returns a pattern for each word of a query; it finds words that begin with it, in capitals or not. */
    static List<Pattern> patterns(String query) {
        List<Pattern> patterns = new ArrayList<>();
        for (String word : query.strip().split("[^\\p{L}\\p{N}]+")) {
            if (!word.isEmpty()) {
                patterns.add(Pattern.compile(
                        "(?<![\\p{L}\\p{N}])" + Pattern.quote(word), Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE));
            }
        }
        return patterns;
    }

    private static Optional<Hit> hit(HelpPage page, List<Pattern> words) {
        double sum = 0;
        for (Pattern word : words) {
            double weight = 0;
            for (HelpBlock block : page.blocks()) {
                weight += weight(block)
                        * word.matcher(block.plainText()).results().count();
            }
            if (weight == 0) {
                return Optional.empty();
            }
            sum += weight;
        }
        return Optional.of(new Hit(page, excerpt(page, words), sum));
    }

    private static double weight(HelpBlock block) {
        if (!(block instanceof HelpBlock.Text text)) {
            return 1;
        }
        return switch (text.kind()) {
            case TITLE -> 20;
            case HEADING, SUBHEADING -> 6;
            case PARAGRAPH, CAUTION, ITEM -> 1;
        };
    }

    private static String excerpt(HelpPage page, List<Pattern> words) {
        String fallback = "";
        for (HelpBlock block : page.blocks()) {
            if (weight(block) > 1) {
                continue;
            }
            String text = block.plainText();
            fallback = fallback.isEmpty() ? text : fallback;
            for (Pattern word : words) {
                Matcher matcher = word.matcher(text);
                if (matcher.find()) {
                    return cut(text, matcher.start());
                }
            }
        }
        return cut(fallback, 0);
    }

    private static String cut(String text, int around) {
        int from = around <= EXCERPT_BEFORE ? 0 : text.indexOf(' ', around - EXCERPT_BEFORE) + 1;
        from = from > around ? around : from;
        int to = text.lastIndexOf(' ', from + EXCERPT_BEFORE + EXCERPT_AFTER);
        boolean whole = text.length() <= from + EXCERPT_BEFORE + EXCERPT_AFTER || to <= around;
        return (from > 0 ? "… " : "") + (whole ? text.substring(from) : text.substring(from, to) + " …");
    }

    private static String plain(String href) {
        int fragment = href.indexOf('#');
        return fragment < 0 ? href : href.substring(0, fragment);
    }
}
