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
        return "Shared log";
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
                .map(shared -> shared.host().isBlank() ? "no server yet" : shared.host())
                .orElse("none");
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
        page.part(() -> use(page, new FormSection(top, "sharedlog", "Shared log of the laboratory")));
        page.part(() -> place(page, new FormSection(top, "sharedlog.place", "Database")));
        return page.start();
    }

    private static String caution(Project project) {
        return project.sharedLog().isEmpty()
                ? ""
                : "Never write a user name or a password here: a project is copied and sent about. They come from the"
                        + " environment (OHMSTEAD_LOG_USER, OHMSTEAD_LOG_PASSWORD) or from a password file"
                        + " (OHMSTEAD_LOG_PASSFILE).";
    }

    private static void use(FormPage page, FormSection form) {
        Field<Boolean> used = form.check("used", "&Hand entries over");
        page.bind(
                used,
                "$.sharedLog",
                "Set shared log",
                project -> project.sharedLog().isPresent(),
                (project, value) -> project.withSharedLog(
                        value ? Optional.of(FRESH.withBench(project.bench().place())) : Optional.empty()));
        form.note(
                "Every bench keeps its own log and works on without the network. With a shared log its entries are handed"
                        + " over to a PostgreSQL database that several benches use; what could not be handed over follows later,"
                        + " each entry once.");
        form.note("The connection is encrypted unless the server is this computer.");
    }

    private static void place(FormPage page, FormSection form) {
        Field<String> host = form.text("host", "&Server");
        host.setHint("Name or address of the computer, for example lab.example.org.");
        bind(page, host, "host", SharedLog::host, SharedLog::withHost);
        Field<Integer> port = form.integer("port", "&Port", 1, MOST_PORT);
        bind(page, port, "port", SharedLog::port, SharedLog::withPort);
        Field<String> database = form.text("database", "&Database");
        bind(page, database, "database", SharedLog::database, SharedLog::withDatabase);
        Field<String> bench = form.text("bench", "&Name of this bench");
        bench.setHint("Under this name its entries stand in the shared log; each bench has its own.");
        bind(page, bench, "bench", SharedLog::bench, SharedLog::withBench);
        Field<String> certificate = form.text("certificate", "&Certificate file");
        certificate.setHint(
                "A file with the certificate that the server's own must be signed by; leave it empty for those"
                        + " that this computer trusts.");
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
                "Set shared log " + PlaceWords.field(name),
                project -> get.apply(project.sharedLog().orElse(FRESH)),
                (project, value) ->
                        project.withSharedLog(project.sharedLog().map(shared -> with.apply(shared, value))));
    }
}
