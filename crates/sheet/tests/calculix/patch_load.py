# Clamped disc under an even pressure over its middle, let go, pressed back, let go: CAX8R solids.
import sys,math
name, a, t, c, F1, F2, kin = sys.argv[1], float(sys.argv[2]), float(sys.argv[3]), float(sys.argv[4]), float(sys.argv[5]), float(sys.argv[6]), sys.argv[7]
rows=4
n0=20
r=[c*i/n0 for i in range(n0+1)]; d=c/n0
while r[-1]<a-1e-9:
    d=min(d*1.1,2.0); r.append(r[-1]+d)
m=len(r)-1-n0
s=(a-c)/(r[-1]-c); r=r[:n0+1]+[c+(x-c)*s for x in r[n0+1:]]
nc=len(r)-1
nodes={}; nid=0; idx={}
for i in range(2*nc+1):
    x=r[i//2] if i%2==0 else 0.5*(r[i//2]+r[i//2+1])
    for j in range(2*rows+1):
        if i%2 and j%2: continue
        nid+=1; idx[i,j]=nid; nodes[nid]=(x,-t/2+t*j/(2*rows))
els=[]
for i in range(nc):
    for j in range(rows):
        I,J=2*i,2*j
        els.append([idx[I,J],idx[I+2,J],idx[I+2,J+2],idx[I,J+2],idx[I+1,J],idx[I+2,J+1],idx[I+1,J+2],idx[I,J+1]])
f=open(name+'.inp','w'); w=f.write
w('*HEADING\nclamped disc, even pressure over the middle\n*NODE,NSET=NALL\n')
for n,(x,y) in nodes.items(): w(f'{n},{x:.9g},{y:.9g},0\n')
w('*ELEMENT,TYPE=CAX8R,ELSET=SHEET\n')
for e,q in enumerate(els): w(f'{e+1},'+','.join(map(str,q))+'\n')
w('*ELSET,ELSET=TOP\n'+'\n'.join(str(i*rows+rows) for i in range(n0))+'\n')
w('*NSET,NSET=EDGE\n'+'\n'.join(str(idx[2*nc,j]) for j in range(2*rows+1))+'\n')
w('*NSET,NSET=AXIS\n'+'\n'.join(str(idx[0,j]) for j in range(2*rows+1))+'\n')
w('*NSET,NSET=MID\n'+'\n'.join(str(idx[2*i,rows]) for i in range(nc+1))+'\n')
w('*MATERIAL,NAME=STEEL\n*ELASTIC\n210000,.3\n')
K,n,Y=530.,.2,200.; e0=(Y/K)**(1/n)
w('*PLASTIC'+(',HARDENING=KINEMATIC' if kin=='kin' else '')+'\n')
for p in [0]+[1e-4*1.25**k for k in range(38)]:
    if p<0.6: w(f'{K*(e0+p)**n:.6f},{p:.8f}\n')
w('*SOLID SECTION,ELSET=SHEET,MATERIAL=STEEL\n*BOUNDARY\nEDGE,1,2\nAXIS,1,1\n')
def step(F, inc):
    p=F/(math.pi*c*c)
    w(f'*STEP,NLGEOM,INC=400\n*STATIC\n{inc},1.,1e-7,0.05\n*DLOAD\nTOP,P3,{p:.9g}\n*NODE PRINT,NSET=MID,FREQUENCY=1000\nU\n*EL PRINT,ELSET=SHEET,FREQUENCY=1000\nPEEQ\n*END STEP\n')
step(F1,0.01); step(1e-6,0.05)
if F2: step(-F2,0.02); step(-1e-6,0.05)
