// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.ui.IMemento;
import org.eclipse.ui.IViewSite;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.lessons.LessonProvider;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;

/** The view named Lessons. */
public final class LessonView extends ViewPart implements LessonComposite.Surroundings {
    private static final String KEPT = "lesson";

    private Optional<String> kept = Optional.empty();
    private LessonComposite lessons;

    @Override
    public void init(IViewSite site, IMemento memento) throws PartInitException {
        super.init(site, memento);
        kept = Optional.ofNullable(memento).map(earlier -> earlier.getString(KEPT));
    }

    @Override
    public void createPartControl(Composite parent) {
        lessons = new LessonComposite(parent, getSite().getService(ProjectDesk.class), this);
        kept.ifPresent(lessons::choose);
        ProjectCommands.help(lessons, "lesson_view");
    }

    @Override
    public void saveState(IMemento memento) {
        Optional<String> chosen = lessons == null ? kept : lessons.chosen();
        chosen.ifPresent(id -> memento.putString(KEPT, id));
    }

    @Override
    public List<LessonProvider> providers() {
        BundleContext context = FrameworkUtil.getBundle(LessonView.class).getBundleContext();
        List<LessonProvider> found = new ArrayList<>();
        try {
            for (ServiceReference<LessonProvider> reference :
                    context.getServiceReferences(LessonProvider.class, null)) {
                Optional.ofNullable(context.getService(reference)).ifPresent(found::add);
            }
        } catch (InvalidSyntaxException never) {
            throw new IllegalStateException("no filter is given", never);
        }
        return found;
    }

    @Override
    public Optional<Path> askFile(String name) {
        FileDialog dialog = new FileDialog(getSite().getShell(), SWT.SAVE);
        dialog.setText(Texts.say("sheet.ask"));
        dialog.setFileName(name);
        dialog.setFilterExtensions(new String[] {"*.html"});
        dialog.setOverwrite(true);
        return Optional.ofNullable(dialog.open()).map(Path::of);
    }

    @Override
    public void open(Path file) {
        Program.launch(file.toString());
    }

    @Override
    public void setFocus() {
        lessons.setFocus();
    }
}
