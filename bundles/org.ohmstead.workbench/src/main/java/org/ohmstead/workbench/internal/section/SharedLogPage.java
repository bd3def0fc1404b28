// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SharedLog;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;

/** Where the laboratory's shared log lies, to which this bench hands over the entries of its own. */
final class SharedLogPage implements SectionPage {
    private static final int LEAST_WIDTH = 460;
    private static final int MOST_PORT = 65_535;
    private static final SharedLog FRESH = new SharedLog("", SharedLog.USUAL_PORT, "", "", "");

    @Override
    public String id() {
        return "sharedlog";
    }

    @Override
    public String name() {
        return Texts.text("sharedlog.name");
    }

    @Override
    public int order() {
        return 700;
    }

    @Override
    public String iconName() {
        return "section-sharedlog";
    }

    @Override
    public String where() {
        return "$.sharedLog";
    }

    @Override
    public String summary(Project project) {
        return project.sharedLog()
                .map(shared -> shared.host().isBlank() ? Texts.text("sharedlog.summary.hostless") : shared.host())
                .orElseGet(() -> Texts.text("sharedlog.summary.none"));
    }

    @Override
    public List<SectionItem> items(Project project) {
        return List.of();
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        FormPage page = new FormPage(parent, desk, "sharedlog");
        NoteLine caution = page.note(page.body(), "caution");
        page.add(project -> caution.show(Severity.WARNING, caution(project)));
        Composite top = new Composite(page.body(), SWT.NONE);
        top.setLayout(new FlowColumns(LEAST_WIDTH, 2));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(top);
        page.part(() -> use(page, new FormSection(top, "sharedlog", Texts.text("sharedlog.heading"))));
        page.part(() -> place(page, new FormSection(top, "sharedlog.place", Texts.text("sharedlog.place"))));
        return page.start();
    }

    private static String caution(Project project) {
        return project.sharedLog().isEmpty() ? "" : Texts.text("sharedlog.caution");
    }

    private static void use(FormPage page, FormSection form) {
        Field<Boolean> used = form.check("used", Texts.text("sharedlog.used"));
        page.bind(
                used,
                "$.sharedLog",
                Texts.edit("sharedlog"),
                project -> project.sharedLog().isPresent(),
                (project, value) -> project.withSharedLog(
                        value ? Optional.of(FRESH.withBench(project.bench().place())) : Optional.empty()));
        form.note(Texts.text("sharedlog.note"));
        form.note(Texts.text("sharedlog.note.encrypted"));
    }

    private static void place(FormPage page, FormSection form) {
        Field<String> host = form.text("host", Texts.text("sharedlog.host"));
        host.setHint(Texts.text("sharedlog.host.hint"));
        bind(page, host, "host", SharedLog::host, SharedLog::withHost);
        Field<Integer> port = form.integer("port", Texts.text("sharedlog.port"), 1, MOST_PORT);
        bind(page, port, "port", SharedLog::port, SharedLog::withPort);
        Field<String> database = form.text("database", Texts.text("sharedlog.database"));
        bind(page, database, "database", SharedLog::database, SharedLog::withDatabase);
        Field<String> bench = form.text("bench", Texts.text("sharedlog.bench"));
        bench.setHint(Texts.text("sharedlog.bench.hint"));
        bind(page, bench, "bench", SharedLog::bench, SharedLog::withBench);
        Field<String> certificate = form.text("certificate", Texts.text("sharedlog.certificate"));
        certificate.setHint(Texts.text("sharedlog.certificate.hint"));
        bind(page, certificate, "certificateFile", SharedLog::certificateFile, SharedLog::withCertificateFile);
        page.add(project -> form.setVisible(project.sharedLog().isPresent()));
    }

    private static <T> void bind(
            FormPage page,
            Field<T> field,
            String name,
            Function<SharedLog, T> get,
            BiFunction<SharedLog, T, SharedLog> with) {
        page.bind(
                field,
                "$.sharedLog." + name,
                Texts.edit("sharedlog." + name),
                project -> get.apply(project.sharedLog().orElse(FRESH)),
                (project, value) ->
                        project.withSharedLog(project.sharedLog().map(shared -> with.apply(shared, value))));
    }
}
