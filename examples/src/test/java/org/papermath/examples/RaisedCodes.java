package org.papermath.examples;

import com.sun.source.tree.AssignmentTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.StatementTree;
import com.sun.source.tree.SwitchExpressionTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.tree.YieldTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Code;

/**
 * The codes the sources raise, with the names of their arguments: read from the trees of the sources, not from their
 * text. Followed are constants, local variables, conditions, switches, and methods that hand on a code or the name of an
 * argument. What cannot be followed is told, so that nothing is passed over.
 */
final class RaisedCodes {
    /** A call that raises a code. */
    record Site(String code, Code.Use use, List<String> arguments, String place) {}

    /** A text a call is given: its values as far as they are known, or the parameter of the method it comes from. */
    private record Given(Set<String> values, int parameter) {
        static final int NONE = -1;

        boolean isOpen() {
            return parameter != NONE;
        }
    }

    /**
     * A method or constructor that raises a code.
     *
     * @param owner the class to be named in the call; empty for a method of objects
     * @param home the file in which it is called by its name alone; empty if there is none
     * @param inside whether it cannot be called from other files
     * @param count how many arguments it takes, or takes at least
     * @param more whether it takes more
     * @param rest the place from which names and values follow in turn
     */
    private record Door(
            Code.Use use,
            String owner,
            String method,
            String home,
            boolean inside,
            int count,
            boolean more,
            Given code,
            List<Given> names,
            int rest) {
        boolean takes(String receiver, String called, String from, int arguments) {
            boolean here = home.equals(from);
            return method.equals(called)
                    && (owner.isEmpty()
                            ? here || !receiver.isEmpty()
                            : owner.equals(receiver) || here && receiver.isEmpty())
                    && (here || !inside)
                    && (more ? arguments >= count : arguments == count);
        }
    }

    /** A method and what is declared in it. */
    private record Scope(
            String file, String type, @Nullable MethodTree method, Map<String, List<ExpressionTree>> locals) {}

    /** Where the known doors are made: what happens inside of them is no call. */
    private static final Set<String> INSIDE =
            Set.of("quantity/Refused.java", "quantity/Unclear.java", "evidence/Notice.java", "plan/Stage.java");

    private static final Given FIRST = new Given(Set.of(), 0);

    private static final List<Door> KNOWN = List.of(
            new Door(Code.Use.REFUSAL, "Refused", "of", "", false, 2, true, FIRST, List.of(), 2),
            new Door(Code.Use.REFUSAL, "new", "Refused", "", false, 3, false, FIRST, List.of(), Given.NONE),
            new Door(Code.Use.QUESTION, "new", "Unclear", "", false, 3, true, FIRST, List.of(), 3),
            new Door(Code.Use.NOTICE, "Notice", "note", "", false, 2, true, FIRST, List.of(), 2),
            new Door(Code.Use.NOTICE, "Notice", "warning", "", false, 2, true, FIRST, List.of(), 2),
            new Door(Code.Use.STAGE, "Stage", "notDone", "", false, 2, false, FIRST, List.of(), Given.NONE),
            new Door(
                    Code.Use.FAULT,
                    "new",
                    "Fault",
                    "",
                    false,
                    11,
                    false,
                    new Given(Set.of(), 4),
                    List.of(),
                    Given.NONE),
            new Door(
                    Code.Use.FAULT,
                    "",
                    "fault",
                    "tree/Source.java",
                    false,
                    8,
                    true,
                    new Given(Set.of(), 3),
                    List.of(),
                    8));

    private final Map<String, ExpressionTree> constants = new HashMap<>();
    private final Map<String, CompilationUnitTree> units = new HashMap<>();
    private final List<Door> doors = new ArrayList<>(KNOWN);
    private final Set<Site> sites = new LinkedHashSet<>();
    private final Set<String> unread = new TreeSet<>();

    private RaisedCodes() {}

    /** Reads the sources below some folders. */
    static RaisedCodes of(List<Path> folders) throws IOException {
        RaisedCodes raised = new RaisedCodes();
        raised.parse(folders);
        int before;
        do {
            before = raised.doors.size();
            raised.sites.clear();
            raised.unread.clear();
            raised.units.forEach((file, unit) -> {
                if (!INSIDE.contains(file)) {
                    raised.walk(file, unit);
                }
            });
        } while (raised.doors.size() > before);
        return raised;
    }

    Set<Site> sites() {
        return sites;
    }

    /** The calls whose code or names are not to be read from the sources, with their file. */
    Set<String> unread() {
        return unread;
    }

    private void parse(List<Path> folders) throws IOException {
        List<Path> files = new ArrayList<>();
        for (Path folder : folders) {
            try (Stream<Path> all = Files.walk(folder)) {
                all.filter(one -> one.toString().endsWith(".java")).sorted().forEach(files::add);
            }
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
            JavacTask task = (JavacTask) compiler.getTask(
                    null, manager, null, List.of("-proc:none"), null, manager.getJavaFileObjectsFromPaths(files));
            for (CompilationUnitTree unit : task.parse()) {
                Path path = Path.of(unit.getSourceFile().toUri());
                String file = path.getParent().getFileName() + "/" + path.getFileName();
                units.put(file, unit);
                constants(file, unit);
            }
        }
    }

    private void constants(String file, CompilationUnitTree unit) {
        unit.accept(
                new TreeScanner<@Nullable Void, String>() {
                    @Override
                    public @Nullable Void visitClass(ClassTree type, String outer) {
                        for (Tree member : type.getMembers()) {
                            if (member instanceof VariableTree field
                                    && field.getInitializer() != null
                                    && field.getModifiers().getFlags().contains(Modifier.FINAL)) {
                                constants.put(file + " " + field.getName(), field.getInitializer());
                                constants.put(type.getSimpleName() + "." + field.getName(), field.getInitializer());
                            }
                        }
                        return super.visitClass(type, outer);
                    }
                },
                "");
    }

    private void walk(String file, CompilationUnitTree unit) {
        unit.accept(
                new TreeScanner<@Nullable Void, Scope>() {
                    @Override
                    public @Nullable Void visitClass(ClassTree type, Scope outer) {
                        String name = type.getSimpleName().toString();
                        return super.visitClass(
                                type,
                                new Scope(file, name.isEmpty() ? outer.type() : name, outer.method(), outer.locals()));
                    }

                    @Override
                    public @Nullable Void visitMethod(MethodTree method, Scope outer) {
                        return super.visitMethod(method, new Scope(file, outer.type(), method, locals(method)));
                    }

                    @Override
                    public @Nullable Void visitMethodInvocation(MethodInvocationTree call, Scope scope) {
                        ExpressionTree method = call.getMethodSelect();
                        if (method instanceof MemberSelectTree select) {
                            call(
                                    select.getExpression().toString(),
                                    select.getIdentifier().toString(),
                                    call.getArguments(),
                                    scope,
                                    call);
                        } else if (method instanceof IdentifierTree name) {
                            call("", name.getName().toString(), call.getArguments(), scope, call);
                        }
                        return super.visitMethodInvocation(call, scope);
                    }

                    @Override
                    public @Nullable Void visitNewClass(NewClassTree call, Scope scope) {
                        call("new", call.getIdentifier().toString(), call.getArguments(), scope, call);
                        return super.visitNewClass(call, scope);
                    }
                },
                new Scope(file, "", null, Map.of()));
    }

    private static Map<String, List<ExpressionTree>> locals(MethodTree method) {
        Map<String, List<ExpressionTree>> locals = new HashMap<>();
        method.accept(
                new TreeScanner<@Nullable Void, @Nullable Void>() {
                    @Override
                    public @Nullable Void visitVariable(VariableTree variable, @Nullable Void nothing) {
                        if (variable.getInitializer() != null) {
                            add(variable.getName().toString(), variable.getInitializer());
                        }
                        return super.visitVariable(variable, nothing);
                    }

                    @Override
                    public @Nullable Void visitAssignment(AssignmentTree assignment, @Nullable Void nothing) {
                        add(assignment.getVariable().toString(), assignment.getExpression());
                        return super.visitAssignment(assignment, nothing);
                    }

                    private void add(String name, ExpressionTree value) {
                        locals.computeIfAbsent(name, key -> new ArrayList<>()).add(value);
                    }
                },
                null);
        return locals;
    }

    private void call(
            String receiver, String called, List<? extends ExpressionTree> arguments, Scope scope, Tree call) {
        boolean found = false;
        boolean read = false;
        for (Door door : List.copyOf(doors)) {
            if (door.takes(receiver, called, scope.file(), arguments.size())) {
                found = true;
                read |= enter(door, arguments, scope);
            }
        }
        if (found && !read) {
            String text = call.toString().replaceAll("\\s+", " ");
            unread.add(scope.file() + ": " + text.substring(0, Math.min(60, text.length())));
        }
    }

    /** Takes a call for one of a door, and tells whether its code and its names could be read. */
    private boolean enter(Door door, List<? extends ExpressionTree> arguments, Scope scope) {
        Given code = at(door.code(), arguments, scope);
        if (code == null || !code.isOpen() && !code.values().stream().allMatch(RaisedCodes::isCode)) {
            return false;
        }
        List<Given> names = new ArrayList<>();
        for (Given name : door.names()) {
            Given given = at(name, arguments, scope);
            if (given == null) {
                return false;
            }
            names.add(given);
        }
        int rest = Given.NONE;
        if (door.rest() != Given.NONE) {
            int more = arguments.size() - door.rest();
            if (more == 1) {
                rest = parameter(arguments.get(door.rest()).toString(), "Object", scope);
                if (rest == Given.NONE) {
                    return false;
                }
            } else {
                for (int i = door.rest(); i < arguments.size(); i += 2) {
                    Given name = given(arguments.get(i), scope, new HashSet<>());
                    if (name == null) {
                        return false;
                    }
                    names.add(name);
                }
            }
        }
        if (code.isOpen() || rest != Given.NONE || names.stream().anyMatch(Given::isOpen)) {
            open(door.use(), code, names, rest, scope);
            return true;
        }
        for (List<String> each : combined(names)) {
            code.values().forEach(one -> sites.add(new Site(one, door.use(), each, scope.file())));
        }
        return true;
    }

    private static boolean isCode(String text) {
        return text.matches("[a-z0-9-]+\\.[a-z0-9-]+");
    }

    /** A method that hands its own parameters on raises a code where it is called. */
    private void open(Code.Use use, Given code, List<Given> names, int rest, Scope scope) {
        MethodTree method = scope.method();
        Set<Modifier> flags = method.getModifiers().getFlags();
        List<? extends VariableTree> parameters = method.getParameters();
        boolean more = !parameters.isEmpty()
                && parameters.get(parameters.size() - 1).toString().contains("...");
        boolean made = method.getName().contentEquals("<init>");
        Door door = new Door(
                use,
                made ? "new" : flags.contains(Modifier.STATIC) ? scope.type() : "",
                made ? scope.type() : method.getName().toString(),
                scope.file(),
                flags.contains(Modifier.PRIVATE),
                more ? parameters.size() - 1 : parameters.size(),
                more,
                code,
                List.copyOf(names),
                rest);
        boolean known = KNOWN.stream()
                .anyMatch(one -> one.method().equals(door.method())
                        && one.home().equals(door.home())
                        && one.count() == door.count());
        if (!known && !doors.contains(door)) {
            doors.add(door);
        }
    }

    private static List<List<String>> combined(List<Given> names) {
        List<List<String>> all = new ArrayList<>(List.of(List.of()));
        for (Given name : names) {
            List<List<String>> longer = new ArrayList<>();
            for (List<String> one : all) {
                for (String value : new TreeSet<>(name.values())) {
                    List<String> with = new ArrayList<>(one);
                    with.add(value);
                    longer.add(with);
                }
            }
            all = longer;
        }
        return all;
    }

    private @Nullable Given at(Given wanted, List<? extends ExpressionTree> arguments, Scope scope) {
        return wanted.isOpen() ? given(arguments.get(wanted.parameter()), scope, new HashSet<>()) : wanted;
    }

    private static int parameter(String name, String type, Scope scope) {
        if (scope.method() != null) {
            List<? extends VariableTree> parameters = scope.method().getParameters();
            for (int i = 0; i < parameters.size(); i++) {
                if (parameters.get(i).getName().contentEquals(name)
                        && parameters.get(i).getType().toString().startsWith(type)) {
                    return i;
                }
            }
        }
        return Given.NONE;
    }

    private @Nullable Given given(ExpressionTree text, Scope scope, Set<String> seen) {
        if (text instanceof ParenthesizedTree inner) {
            return given(inner.getExpression(), scope, seen);
        }
        if (text instanceof LiteralTree literal) {
            return literal.getValue() instanceof String value ? new Given(Set.of(value), Given.NONE) : null;
        }
        if (text instanceof ConditionalExpressionTree either) {
            return all(List.of(either.getTrueExpression(), either.getFalseExpression()), scope, seen);
        }
        if (text instanceof SwitchExpressionTree choice) {
            return all(results(choice), scope, seen);
        }
        String name = text.toString();
        if (text instanceof IdentifierTree && seen.add(name)) {
            int parameter = parameter(name, "String", scope);
            if (parameter != Given.NONE) {
                return new Given(Set.of(), parameter);
            }
            List<ExpressionTree> values = scope.locals().get(name);
            if (values != null) {
                return all(values, scope, seen);
            }
            ExpressionTree constant = constants.get(scope.file() + " " + name);
            return constant == null ? null : given(constant, scope, seen);
        }
        if (text instanceof MemberSelectTree) {
            ExpressionTree constant = constants.get(name);
            return constant == null ? null : given(constant, scope, seen);
        }
        return null;
    }

    private @Nullable Given all(List<? extends ExpressionTree> texts, Scope scope, Set<String> seen) {
        Set<String> values = new TreeSet<>();
        for (ExpressionTree one : texts) {
            Given given = given(one, scope, new HashSet<>(seen));
            if (given == null || given.isOpen()) {
                return texts.size() == 1 ? given : null;
            }
            values.addAll(given.values());
        }
        return new Given(values, Given.NONE);
    }

    private static List<ExpressionTree> results(SwitchExpressionTree choice) {
        List<ExpressionTree> results = new ArrayList<>();
        choice.getCases().forEach(one -> {
            if (one.getBody() instanceof ExpressionTree value) {
                results.add(value);
            } else if (one.getBody() instanceof StatementTree statement) {
                statement.accept(
                        new TreeScanner<@Nullable Void, @Nullable Void>() {
                            @Override
                            public @Nullable Void visitYield(YieldTree yield, @Nullable Void nothing) {
                                results.add(yield.getValue());
                                return null;
                            }
                        },
                        null);
            }
        });
        return results;
    }
}
