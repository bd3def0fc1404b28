// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import freemarker.core.HTMLOutputFormat;
import freemarker.core.TemplateClassResolver;
import freemarker.core.TemplateHTMLOutputModel;
import freemarker.template.Configuration;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import freemarker.template.TemplateMethodModelEx;
import freemarker.template.TemplateModelException;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.regex.Pattern;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.units.text.Language;

/** Fills the template of a sheet's design. Every text is escaped unless it is a chart, a formula or the style sheet, which are ours. */
public final class SheetTemplate {
    private static final String PARTS = "parts.ftlh";
    private static final String STYLE = "sheet.css";
    private static final String DESIGNS_STYLE = "designs.css";
    private static final String SCREEN_STYLE = "screen.css";
    private static final String DESIGNS_SCREEN_STYLE = "designs-screen.css";
    private static final String BENCH_MARGINS = "@page { margin: 10mm 14mm 14mm 14mm; }\n";
    private static final Pattern DISTORTION_INDEX = Pattern.compile("\\b(THD)_([FR])\\b");
    private static final int MOST_HEAD_LINES = 4;
    private static final String PAPER_OF_STYLE = "size: A4 portrait";

    private final ResultsSheet sheet;
    private final Speech speech;
    private final boolean paged;
    private final ChartBook book;
    private final BenchRoom room;

    private SheetTemplate(ResultsSheet sheet, boolean paged, ChartBook book, BenchRoom room) {
        this.sheet = sheet;
        this.paged = paged;
        this.book = book;
        this.room = room;
        this.speech = Speech.in(sheet.form().language());
    }

    /** Returns the sheet for a screen: one XHTML document that needs nothing else. */
    public static String screen(ResultsSheet sheet) {
        return new SheetTemplate(sheet, false, ChartBook.forScreen(sheet.form().language()), BenchRoom.ENDLESS)
                .inItsLanguage();
    }

    /** Returns the sheet for pages: XHTML whose charts are object elements, drawn by {@link PageCharts}. */
    static String paper(ResultsSheet sheet, ChartBook book, BenchRoom room) {
        return new SheetTemplate(sheet, true, book, room).inItsLanguage();
    }

    private SheetDesign design() {
        return sheet.form().design();
    }

    /** What other bundles say of curves and budgets is said while the sheet is filled, so they too must know its language. */
    private String inItsLanguage() {
        return Language.speaking(sheet.form().language(), this::fill);
    }

    private String fill() {
        Map<String, Object> model = new HashMap<>();
        model.put("page", page());
        model.put("sheet", content());
        model.put("t", (TemplateMethodModelEx) arguments -> translated(arguments));
        model.put("m", (TemplateMethodModelEx) arguments -> marked(translated(arguments)));
        StringWriter text = new StringWriter();
        try {
            template(design().name().toLowerCase(Locale.ROOT) + ".ftlh").process(model, text);
        } catch (TemplateException e) {
            throw new IllegalStateException("The template of the results sheet does not fit its data.", e);
        } catch (IOException e) {
            throw new UncheckedIOException("The template of the results sheet cannot be read.", e);
        }
        return PlainText.clean(text.toString());
    }

    private Object content() {
        return switch (design()) {
            case FULL -> new SheetBuilder(sheet, speech, book).build();
            case BENCH -> new BenchBuilder(sheet, speech, book, room).build();
            case COMPARISON -> new ComparisonBuilder(sheet, speech, book).build();
            case HANDOUT -> new HandoutBuilder(sheet, speech, book).build();
        };
    }

    /** Called by the template with a key and texts; what it returns is escaped like any other text. */
    private String translated(List<?> arguments) {
        Object[] texts = arguments.stream().skip(1).map(Object::toString).toArray();
        return speech.text(arguments.get(0).toString(), texts);
    }

    /** Sets the index of a distortion measure low, as its symbol has it. */
    private static TemplateHTMLOutputModel marked(String text) throws TemplateModelException {
        String escaped = HTMLOutputFormat.INSTANCE.escapePlainText(text);
        return HTMLOutputFormat.INSTANCE.fromMarkup(
                DISTORTION_INDEX.matcher(escaped).replaceAll("$1<sub>$2</sub>"));
    }

    private PageView page() {
        String amplifier = Facts.amplifierName(sheet.project().amplifier());
        String key = "design." + design();
        return new PageView(
                paged,
                style(),
                speech.code(),
                speech.text(key + ".title", amplifier),
                Facts.author(sheet.project()),
                speech.text(key + ".subject", amplifier),
                amplifier,
                new Facts(sheet, speech).footer(),
                design() == SheetDesign.BENCH
                        ? LabHead.of(sheet).limited(MOST_HEAD_LINES, room.characters())
                        : LabHead.of(sheet));
    }

    private String style() {
        LabHead lab = LabHead.of(sheet);
        boolean plain = design() == SheetDesign.FULL && !lab.shown();
        String style = resource(STYLE) + (plain ? "" : resource(DESIGNS_STYLE));
        if (!paged) {
            return style + resource(SCREEN_STYLE) + (plain ? "" : resource(DESIGNS_SCREEN_STYLE));
        }
        String sized =
                sheet.form().paper() == PaperSize.LETTER ? style.replace(PAPER_OF_STYLE, "size: 8.5in 11in") : style;
        return design() == SheetDesign.BENCH
                ? sized + "body.paged { font-size: " + room.typePixels() + "px; }\n" + BENCH_MARGINS
                : sized;
    }

    private static Template template(String name) throws IOException {
        Configuration configuration = new Configuration(Configuration.VERSION_2_3_34);
        configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
        // The templates are ours and make no objects; a text that got into one could not either.
        configuration.setNewBuiltinClassResolver(TemplateClassResolver.ALLOWS_NOTHING_RESOLVER);
        configuration.setAPIBuiltinEnabled(false);
        configuration.setLocale(Locale.ROOT);
        configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
        configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
        configuration.setLogTemplateExceptions(false);
        return new Template(name, new StringReader(resource(PARTS) + resource(name)), configuration);
    }

    private static String resource(String name) {
        try (InputStream stream = SheetTemplate.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("The file " + name + " is missing from the report bundle.");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("The file " + name + " of the report bundle cannot be read.", e);
        }
    }
}
