// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import freemarker.core.HTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import org.ohmstead.report.ResultsSheet;

/** Fills the template of the sheet. Every text is escaped unless it is a chart or the style sheet, which are ours. */
public final class SheetTemplate {
    private static final String TEMPLATE = "sheet.ftlh";
    private static final String STYLE = "sheet.css";
    private static final String SCREEN_STYLE = "screen.css";

    private SheetTemplate() {}

    /** Returns the sheet for a screen: one XHTML document that needs nothing else. */
    public static String screen(ResultsSheet sheet) {
        return fill(
                new SheetBuilder(sheet, ChartBook.forScreen()).build(false, resource(STYLE) + resource(SCREEN_STYLE)));
    }

    /** Returns the sheet for pages: XHTML whose charts are object elements, drawn by {@link PageCharts}. */
    static String paper(ResultsSheet sheet, ChartBook book) {
        return fill(new SheetBuilder(sheet, book).build(true, resource(STYLE)));
    }

    private static String fill(SheetView view) {
        StringWriter text = new StringWriter();
        try {
            template().process(Map.of("sheet", view), text);
        } catch (TemplateException e) {
            throw new IllegalStateException("The template of the results sheet does not fit its data.", e);
        } catch (IOException e) {
            throw new UncheckedIOException("The template of the results sheet cannot be read.", e);
        }
        return PlainText.clean(text.toString());
    }

    private static Template template() throws IOException {
        Configuration configuration = new Configuration(Configuration.VERSION_2_3_34);
        configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
        configuration.setLocale(Locale.ROOT);
        configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
        configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
        configuration.setLogTemplateExceptions(false);
        return new Template(TEMPLATE, new StringReader(resource(TEMPLATE)), configuration);
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
